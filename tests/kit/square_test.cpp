// The unit square: its maps and the density over it.
#include <algorithm>

#include <gtest/gtest.h>

#include "kit/emitter.h"
#include "kit/kit_shapes.h"
#include "kit/place_warp.h"
#include "kit/square_maps.h"
#include "scatter/chi_square.h"
#include "scatter/random_stream.h"

namespace understudy {
namespace {

constexpr std::size_t kSide = 16;
constexpr std::size_t kCells = kSide * kSide;

std::size_t cell_of(const Vec2& square) {
    const auto place = [](float x) { return std::min(static_cast<std::size_t>(x * kSide), kSide - 1); };
    return place(square.y) * kSide + place(square.x);
}

// Shirley and Chiu 1997: the map keeps area, so rings of equal area and sectors of equal angle get equal counts.
TEST(SquareMaps, TheDiscIsFilledEvenly) {
    RandomStream random(1);
    constexpr double kSamples = 400000.0;
    std::vector<double> expected(kCells, kSamples / kCells);
    std::vector<double> observed(kCells, 0.0);
    for (int i = 0; i < static_cast<int>(kSamples); ++i) {
        const Vec3 u = random.next3();
        const DiscPoint point = square_to_disc({u.x, u.y});
        observed[cell_of({point.radius * point.radius, (point.angle + kPi) / (2.0F * kPi)})] += 1.0;
    }
    EXPECT_GT(compare_cells(expected, observed).p_value, 0.001);
}

TEST(SquareMaps, TheDiscLeadsBackToTheSquare) {
    for (int i = 0; i <= 100; ++i) {
        for (int j = 0; j <= 100; ++j) {
            const Vec2 square(static_cast<float>(i) / 100.0F, static_cast<float>(j) / 100.0F);
            const Vec2 back = disc_to_square(square_to_disc(square));
            EXPECT_NEAR(back.x, square.x, 1e-6F);
            EXPECT_NEAR(back.y, square.y, 1e-6F);
        }
    }
}

// A cell gets of the square what it weighs of all, wherever cells begin and end, and what comes of it leads back.
TEST(PlaceWarp, GivesEachCellItsShare) {
    const PlaceWarp::Breaks across{0.0F, 0.1F, 0.15F, 0.9F, 1.0F};
    const PlaceWarp::Breaks up{0.0F, 0.5F, 0.52F, 1.0F};
    const std::vector<float> weights{1, 0.01F, 3, 2, 0.2F, 0.2F, 0.2F, 5, 1, 8, 0.5F, 1};
    const PlaceWarp warp(across, up, weights);
    constexpr double kSamples = 100000.0;
    double all = 0.0;
    for (const float weight : weights) all += static_cast<double>(weight);
    std::vector<double> expected;
    expected.reserve(weights.size());
    for (const float weight : weights) expected.push_back(kSamples * static_cast<double>(weight) / all);
    std::vector<double> observed(weights.size(), 0.0);
    RandomStream random(41);
    for (int i = 0; i < static_cast<int>(kSamples); ++i) {
        const Vec3 u = random.next3();
        const PlaceWarp::Place place = warp.at({u.x, u.y});
        const auto cell = [](const PlaceWarp::Breaks& breaks, float at) {
            return static_cast<std::size_t>(std::upper_bound(breaks.begin(), breaks.end() - 1, at) - breaks.begin()) -
                   1;
        };
        const std::size_t column = cell(across, place.square.x);
        const std::size_t row = cell(up, place.square.y);
        const std::size_t index = row * 4 + column;
        observed[index] += 1.0;
        const float area = (across[column + 1] - across[column]) * (up[row + 1] - up[row]);
        ASSERT_NEAR(place.stretch, area * static_cast<float>(all) / weights[index], 1e-3F * place.stretch);
        const Vec2 back = warp.even_of(place.square);
        ASSERT_NEAR(back.x, u.x, 1e-5F);
        ASSERT_NEAR(back.y, u.y, 1e-5F);
    }
    EXPECT_GT(compare_cells(expected, observed).p_value, 0.001);
}

// Linear between the grid's points: the value at a cell's middle times its area is the cell's mass, exactly.
std::vector<double> masses(const SquareDensity& density) {
    std::vector<double> cells(kCells, 0.0);
    for (std::size_t i = 0; i < kCells; ++i) {
        const std::size_t row = i / kSide;
        const Vec2 middle((static_cast<float>(i % kSide) + 0.5F) / kSide, (static_cast<float>(row) + 0.5F) / kSide);
        cells[i] = static_cast<double>(density.density(middle)) / kCells;
    }
    return cells;
}

double chance_of_samples(const SquareDensity& density, std::uint32_t seed) {
    constexpr int kSamples = 60000;
    std::vector<double> expected = masses(density);
    for (double& cell : expected) cell *= kSamples;
    std::vector<double> observed(kCells, 0.0);
    RandomStream random(seed);
    for (int i = 0; i < kSamples; ++i) {
        const Vec3 u = random.next3();
        observed[cell_of(density.sample({u.x, u.y}))] += 1.0;
    }
    return compare_cells(std::move(expected), std::move(observed)).p_value;
}

double total(const SquareDensity& density) {
    double sum = 0.0;
    for (const double mass : masses(density)) sum += mass;
    return sum;
}

TEST(SquareDensity, SamplesAreAsOftenAsItSays) {
    const std::vector<std::array<float, 9>> grids{{1, 1, 1, 1, 1, 1, 1, 1, 1},
                                                  {0, 0, 0, 0, 1, 0, 0, 0, 0},
                                                  {1, 0, 0, 0, 0, 0, 0, 0, 0},
                                                  {1, 2, 3, 4, 5, 6, 7, 8, 9},
                                                  {0, 3, 0, 1e-3F, 7, 2, 9, 0, 0.5F}};
    std::uint32_t seed = 20;
    for (const auto& grid : grids) {
        const SquareDensity density(grid);
        EXPECT_NEAR(total(density), 1.0, 1e-5);
        EXPECT_GT(chance_of_samples(density, seed++), sidak(0.001, grids.size()));
    }
}

// For every shape, receivers on and off the axis, upright, slanted and nearly edge-on.
TEST(SquareDensity, SamplesAreAsOftenAsItSaysForEveryShape) {
    const PlacedFront front = slanted_front();
    const std::vector<Vec3> receivers = receivers_before(front);
    std::uint32_t seed = 100;
    for (const NamedShape& named : every_shape()) {
        const Emitter emitter(named.shape, front, named.table);
        for (const Vec3& receiver : receivers) {
            const Vec3 toward = glm::normalize(Vec3(front.centre) - receiver);
            const Frame frame = Frame::around(toward);
            for (const float slant : {0.0F, 0.7F, 1.5F}) {
                for (const Response response : {Response::kFlat, Response::kDome}) {
                    SCOPED_TRACE(named.name + " slant " + std::to_string(slant));
                    const Vec3 normal = std::cos(slant) * toward + std::sin(slant) * frame.tangent;
                    const auto density = emitter.density_for(receiver, normal, response);
                    if (!density && named.table && named.table->layout().angles.back() < 1.5F)
                        continue;  // past its cut-off
                    ASSERT_TRUE(density);
                    EXPECT_NEAR(total(*density), 1.0, 1e-5);
                    EXPECT_GT(chance_of_samples(*density, seed++), sidak(0.001, every_shape().size() * 24));
                    for (const float x : {0.0F, 0.37F, 1.0F}) EXPECT_GT(density->density({x, 1.0F - x}), 0.0F);
                }
            }
        }
    }
}

}  // namespace
}  // namespace understudy
