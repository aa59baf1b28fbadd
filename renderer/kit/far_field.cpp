#include "kit/far_field.h"

#include <cmath>
#include <functional>

#include "kit/emission_weights.h"
#include "kit/table_cells.h"

namespace understudy {

namespace {

constexpr std::uint32_t kTurnsOfRound = 32;

using FrontVisitor = std::function<void(const Vec3& place, const Vec3& normal, double area)>;

// Every knot of the front in each of the places that symmetry folds onto it, with its share of the area.
void each_place(const EmissionTable& table, const FrontVisitor& visit) {
    const EmissionLayout& layout = table.layout();
    const TableCells cells(layout);
    const EmissionWeights weights = emission_weights(layout);
    const auto knot = [](std::size_t i, std::size_t count) { return i == 0 ? 0.0F : (i + 1 == count ? 1.0F : 0.5F); };
    const std::uint32_t turns = layout.round() ? kTurnsOfRound : std::max(layout.sides, 1U);
    const bool rectangle = layout.fold == EmissionLayout::Fold::kRectangle;
    const int images = rectangle ? 4 : 2;
    for (std::size_t a = 0; a < layout.across; ++a) {
        for (std::size_t b = 0; b < layout.along; ++b) {
            const CellPlace cell = cells.place(a, b, knot(a, layout.across), knot(b, layout.along));
            const double area = weights.across[a] * weights.along[b] / (images * static_cast<double>(turns));
            for (std::uint32_t i = 0; i < turns; ++i) {
                const CellPlace turned = cell.turned_by(static_cast<float>(i) / static_cast<float>(turns));
                for (int image = 0; image < images; ++image) {
                    const Vec3 mirror((image & 1) != 0 ? -1.0F : 1.0F, (image & 2) != 0 ? -1.0F : 1.0F, 1.0F);
                    visit(mirror * turned.place, mirror * turned.normal, area);
                }
            }
        }
    }
}

// The border's knots: the last across, and of a rectangle the last along too.
bool on_border(const EmissionLayout& layout, const Vec3& place) {
    constexpr float kNear = 0.999F;
    switch (layout.fold) {
        case EmissionLayout::Fold::kRectangle:
            return std::abs(place.x) > kNear * layout.reach || std::abs(place.y) > kNear * layout.second_reach;
        case EmissionLayout::Fold::kPolygon: {
            const float slice = 2.0F * kPi / static_cast<float>(layout.sides);
            const float round = std::atan2(place.x, place.y) / slice;
            const float off = (round - std::round(round)) * slice;
            return std::hypot(place.x, place.y) * std::cos(off) > kNear * layout.reach;
        }
        default:
            return std::hypot(place.x, place.y) > kNear * layout.reach;
    }
}

}  // namespace

double intensity(const EmissionTable& table, const Vec3& direction) {
    double sum = 0.0;
    each_place(table, [&](const Vec3& place, const Vec3& normal, double area) {
        const float cosine = glm::dot(normal, direction);
        if (cosine > 0.0F) sum += area * static_cast<double>(cosine * table.radiance(place, direction));
    });
    return sum;
}

double axial_illuminance(const EmissionTable& table, double distance_m) {
    const Vec3 receptor(0.0F, 0.0F, static_cast<float>(distance_m));
    double sum = 0.0;
    each_place(table, [&](const Vec3& place, const Vec3& normal, double area) {
        const Vec3 away = receptor - place;
        const float distance2 = glm::dot(away, away);
        const Vec3 direction = away / std::sqrt(distance2);
        const float cosine = glm::dot(normal, direction);
        if (cosine <= 0.0F) return;
        sum += area * static_cast<double>(cosine * direction.z * table.radiance(place, direction) / distance2);
    });
    return sum;
}

std::optional<double> hot_spot_stops(const EmissionTable& table) {
    const EmissionLayout& layout = table.layout();
    if (layout.fold == EmissionLayout::Fold::kBall) return std::nullopt;
    const Vec3 axis(0.0F, 0.0F, 1.0F);
    double border = 0.0;
    double area_of_border = 0.0;
    each_place(table, [&](const Vec3& place, const Vec3&, double area) {
        if (!on_border(layout, place)) return;
        border += area * static_cast<double>(table.radiance(place, axis));
        area_of_border += area;
    });
    // A ring's middle is its hole: what is brightest there lies between its edges.
    const bool hole = layout.fold == EmissionLayout::Fold::kRound && layout.second_reach > 0.0F;
    const Vec3 middle(hole ? 0.5F * (layout.reach + layout.second_reach) : 0.0F, 0.0F, 0.0F);
    const double edge = border / area_of_border;
    const auto centre = static_cast<double>(table.radiance(middle, axis));
    return edge > 0.0 && centre > 0.0 ? std::optional(std::log2(centre / edge)) : std::nullopt;
}

}  // namespace understudy
