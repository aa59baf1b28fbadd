#include "kit/trace_emission.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <tbb/parallel_for.h>

#include "kit/emission_weights.h"
#include "kit/grid_cells.h"
#include "kit/light_walk.h"
#include "kit/square_maps.h"
#include "kit/table_cells.h"
#include "scatter/microfacet.h"

namespace understudy {

namespace {

// For all of a table: a second or two of one core.
constexpr double kClothPaths = 2e6;
constexpr double kOpenPaths = 4e6;
constexpr int kPhotonStreams = 64;
constexpr int kPhotonsAStream = 4000;
constexpr int kGridSamples = 64;  // within a cell of directions

// Places within a cell that fill it evenly: the additive recurrences of M. Roberts, "The Unreasonable Effectiveness of
// Quasirandom Sequences", 2018, from a random start.
class EvenPoints {
  public:
    explicit EvenPoints(WalkNumbers& random) {
        for (float& value : at_) value = random.next();
    }
    // In [0, 1)⁴, the next one.
    const std::array<float, 4>& next() {
        // Powers of 1 / 1.16730397826…, the root of x⁵ = x + 1.
        constexpr std::array<float, 4> kSteps{0.85667488F, 0.73389185F, 0.62870672F, 0.53859725F};
        for (std::size_t i = 0; i < at_.size(); ++i) {
            at_[i] += kSteps[i];
            if (at_[i] >= 1.0F) at_[i] -= 1.0F;
        }
        return at_;
    }

  private:
    std::array<float, 4> at_{};
};

class Tracer {
  public:
    Tracer(const Construction& construction, const ModifierShape& front, double effort)
        : construction_(construction),
          walk_(construction, front),
          layout_(emission_layout(construction, front)),
          cells_(layout_),
          effort_(effort),
          values_(layout_.size(), 0.0F) {
        if (walk_.front()) directions_ = all_directions();
    }

    std::vector<float> fill() {
        tbb::parallel_for(std::size_t{0}, layout_.places(), [&](std::size_t place) {
            if (walk_.front()) {
                fill_behind_cloth(place);
            } else {
                fill_opening(place);
            }
            join_on_axis(place);
        });
        return std::move(values_);
    }

    // In streams that are summed in their order.
    WalkTotals photons() const {
        std::vector<WalkTotals> parts(kPhotonStreams);
        const int each = std::max(100, static_cast<int>(effort_ * kPhotonsAStream));
        tbb::parallel_for(std::size_t{0}, parts.size(),
                          [&](std::size_t i) { parts[i] = walk_.follow(each, 1000000 + i); });
        WalkTotals sum;
        for (const WalkTotals& part : parts) {
            sum.out += part.out / kPhotonStreams;
            sum.absorbed += part.absorbed / kPhotonStreams;
            sum.standard_error += part.standard_error * part.standard_error;
        }
        sum.standard_error = std::sqrt(sum.standard_error) / kPhotonStreams;
        return sum;
    }

    const EmissionLayout& layout() const { return layout_; }

  private:
    struct Direction {
        Vec3 local;
        float passes;
    };

    int paths(double all, std::size_t cells) const {
        return std::max(8, static_cast<int>(effort_ * all / static_cast<double>(cells)));
    }
    float* values_at(std::size_t place) { return &values_[place * layout_.directions()]; }

    // What the grid lets pass, over a cell of directions and over the turns that the fold takes for the same.
    float passes(const CellDirection& direction) const {
        if (!construction_.grid) return 1.0F;
        const Grid& grid = *construction_.grid;
        const std::uint32_t turns = same_turns();
        if (grid.cells == Grid::Cells::kRound || turns == 1) return grid_passes(grid, direction.local);
        float sum = 0.0F;
        for (std::uint32_t i = 0; i < turns; ++i) {
            const Vec2 turn = turned(static_cast<float>(i) / static_cast<float>(turns));
            const Vec3& d = direction.local;
            sum += grid_passes(grid, {turn.x * d.x - turn.y * d.y, turn.y * d.x + turn.x * d.y, d.z});
        }
        return sum / static_cast<float>(turns);
    }

    // Turns round the axis that the fold takes for the same.
    std::uint32_t same_turns() const {
        if (layout_.round()) return 32;
        return std::max(layout_.sides, 1U);
    }

    // A place within the cell or within any other that the fold takes for the same: the tube need not have the front's
    // symmetry.
    CellPlace place_within(std::size_t place, float u, float v, WalkNumbers& random) const {
        const CellPlace cell = cells_.place(place / layout_.along, place % layout_.along, u, v);
        const float turns = random.next();
        if (layout_.round()) return cell.turned_by(turns);
        if (layout_.sides == 0) return cell;
        const auto sides = static_cast<float>(layout_.sides);
        return cell.turned_by(std::floor(turns * sides) / sides);
    }

    std::vector<Direction> all_directions() const {
        std::vector<Direction> directions;
        WalkNumbers random(0);
        for (std::size_t azimuth = 0; azimuth < layout_.azimuths; ++azimuth) {
            for (std::size_t angle = 0; angle < layout_.angles.size(); ++angle) {
                double sum = 0.0;
                double measures = 0.0;
                EvenPoints points(random);
                for (int i = 0; construction_.grid && i < kGridSamples; ++i) {
                    const auto& at = points.next();
                    const CellDirection direction = cells_.direction(azimuth, angle, at[0], at[1]);
                    sum += static_cast<double>(direction.measure * passes(direction));
                    measures += static_cast<double>(direction.measure);
                }
                directions.push_back({cells_.knot_direction(azimuth, angle),
                                      measures > 0.0 ? static_cast<float>(sum / measures) : 1.0F});
            }
        }
        return directions;
    }

    // Light that reaches the cloth from inside, in equal cells of the disc that directions project to.
    struct Incoming {
        static constexpr std::size_t kSide = 20;
        std::vector<double> light = std::vector<double>(kSide * kSide, 0.0);

        void add(const Vec3& inward, double flux) {
            const Vec2 square = disc_to_square(
                {std::min(1.0F, std::sqrt(inward.x * inward.x + inward.y * inward.y)), std::atan2(inward.y, inward.x)});
            const auto cell = [](float at) {
                return std::min(static_cast<std::size_t>(at * static_cast<float>(kSide)), kSide - 1);
            };
            light[cell(square.y) * kSide + cell(square.x)] += flux;
        }
        static Vec3 direction(std::size_t cell) {
            const auto at = [](std::size_t i) { return (static_cast<float>(i) + 0.5F) / static_cast<float>(kSide); };
            const DiscVector<float> disc = square_to_disc_vector(at(cell % kSide), at(cell / kSide));
            return {disc.radius * disc.x, disc.radius * disc.y,
                    -std::sqrt(std::max(0.0F, 1.0F - disc.radius * disc.radius))};
        }
    };

    // One path a way inward; every place takes the same random numbers, so that what noise there is has no spots.
    Incoming light_behind_cloth(std::size_t place) const {
        Incoming incoming;
        WalkNumbers random(0);
        EvenPoints points(random);
        const Part front = walk_.interior().is_ball() ? Part::kWall : Part::kFront;
        const int count = paths(kClothPaths, layout_.places());
        double measures = 0.0;
        for (int i = 0; i < count; ++i) {
            const auto at = points.next();
            WalkNumbers path(static_cast<std::uint64_t>(i));
            const CellPlace cell = place_within(place, at[0], at[1], path);
            const Frame frame = cell.frame();
            measures += static_cast<double>(cell.measure);
            const Vec3 even_way = sample_cosine(at[2], at[3]);
            const Vec3 inward(even_way.x, even_way.y, -even_way.z);
            const TubeSample tube = walk_.tube().sample(cell.place, path);
            const Vec3 toward = frame.to_local(tube.direction);
            if (tube.density > 0.0F && toward.z < 0.0F &&
                walk_.interior().open_between(cell.place, tube.direction, tube.distance, front)) {
                incoming.add(toward,
                             static_cast<double>(cell.measure * -toward.z * walk_.tube().radiance() / tube.density));
            }
            const float light = walk_.radiance_along(cell.place, frame.to_world(inward), false, path);
            incoming.add(inward, static_cast<double>(cell.measure * kPi * light));
        }
        for (double& light : incoming.light) light /= measures;
        return incoming;
    }

    // Behind cloth the paths from one place tell of every direction outside.
    void fill_behind_cloth(std::size_t place) {
        const Sheet& cloth = *walk_.front();
        const Incoming incoming = light_behind_cloth(place);
        double even = 0.0;
        for (const double light : incoming.light) even += light * static_cast<double>(cloth.even_through() / kPi);
        float* values = values_at(place);
        for (std::size_t i = 0; i < directions_.size(); ++i) {
            double lobe = 0.0;
            for (std::size_t cell = 0; cell < incoming.light.size(); ++cell) {
                lobe += incoming.light[cell] *
                        static_cast<double>(cloth.gloss_through(directions_[i].local, Incoming::direction(cell)));
            }
            values[i] = static_cast<float>(even + lobe) * directions_[i].passes;
        }
    }

    // Through an opening the inside is seen as it is: a path for each direction.
    void fill_opening(std::size_t place) {
        float* values = values_at(place);
        const int count = paths(kOpenPaths, layout_.size());
        for (std::size_t azimuth = 0; azimuth < layout_.azimuths; ++azimuth) {
            for (std::size_t angle = 0; angle < layout_.angles.size(); ++angle) {
                const std::size_t index = azimuth * layout_.angles.size() + angle;
                // Each its own, so that the noise of many places and directions cancels on whatever they light.
                WalkNumbers random(place * layout_.directions() + index);
                EvenPoints points(random);
                double sum = 0.0;
                double measures = 0.0;
                for (int i = 0; i < count; ++i) {
                    const auto at = points.next();
                    const CellPlace cell = place_within(place, at[0], at[1], random);
                    const CellDirection direction = cells_.direction(azimuth, angle, at[2], at[3]);
                    const float measure = cell.measure * direction.measure;
                    measures += static_cast<double>(measure);
                    const float share = passes(direction);
                    if (share <= 0.0F) continue;
                    const float light =
                        walk_.radiance_along(cell.place, -cell.frame().to_world(direction.local), true, random);
                    sum += static_cast<double>(measure * share * light);
                }
                values[index] = measures > 0.0 ? static_cast<float>(sum / measures) : 0.0F;
            }
        }
    }

    // Along the axis there is no azimuth, so all of them hold one value.
    void join_on_axis(std::size_t place) {
        float* values = values_at(place);
        const std::size_t angles = layout_.angles.size();
        double sum = 0.0;
        for (std::size_t azimuth = 0; azimuth < layout_.azimuths; ++azimuth) {
            sum += static_cast<double>(values[azimuth * angles]);
        }
        for (std::size_t azimuth = 0; azimuth < layout_.azimuths; ++azimuth) {
            values[azimuth * angles] = static_cast<float>(sum / static_cast<double>(layout_.azimuths));
        }
    }

    const Construction& construction_;
    LightWalk walk_;
    EmissionLayout layout_;
    TableCells cells_;
    double effort_;
    std::vector<Direction> directions_;  // of the knots
    std::vector<float> values_;
};

}  // namespace

std::optional<TracedEmission> trace_emission(const Construction& construction, const ModifierShape& front,
                                             double effort) {
    Tracer tracer(construction, front, effort);
    const WalkTotals totals = tracer.photons();
    std::vector<float> values = tracer.fill();
    const double flux = emission_flux(tracer.layout(), values);
    if (!(flux > 0.0)) return std::nullopt;
    return TracedEmission{EmissionTable(tracer.layout(), std::move(values)), totals.out, totals.standard_error, flux};
}

}  // namespace understudy
