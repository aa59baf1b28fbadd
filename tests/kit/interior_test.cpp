// Light through a modifier's inside, against closed forms and what the trade sees.
#include <tbb/global_control.h>

#include <gtest/gtest.h>

#include "interior_cases.h"
#include "kit/far_field.h"
#include "kit/light_walk.h"
#include "kit/trace_emission.h"

namespace understudy {
namespace {

// Conservation: what leaves and what is lost add up to what the tube gives, to 0.1 %. The noise: photons that carry
// under a tenth go on by chance, 1e-3 of each at the most, so that 60 000 of them leave 2e-4.
TEST(Interior, LosesNoLightUncounted) {
    for (const InteriorCase& c : interior_cases()) {
        const WalkTotals totals = LightWalk(c.construction, c.front).follow(60000, 7);
        EXPECT_NEAR(totals.out + totals.absorbed, 1.0, 1e-3) << c.name;
        EXPECT_GT(totals.out, 0.0) << c.name;
        EXPECT_GT(totals.absorbed, 0.0) << c.name;
    }
}

// Both estimators, photons from the tube and paths from the front, tell the same flux. 2 %: half of it for the paths'
// noise, half for the table's cells.
TEST(Interior, PhotonsFromTheTubeAndPathsFromTheFrontAgree) {
    for (const InteriorCase& c : interior_cases()) {
        const auto traced = trace_emission(c.construction, c.front, 0.4);
        ASSERT_TRUE(traced) << c.name;
        EXPECT_NEAR(traced->traced_flux / traced->efficiency, 1.0,
                    0.02 + 4.0 * traced->standard_error / traced->efficiency)
            << c.name;
        EXPECT_NEAR(traced->table.flux(), 1.0, 1e-6) << c.name;
    }
}

// The integrating sphere: M = ρ / (1 − ρ (1 − f)) and, of the light that enters, f / (1 − ρ (1 − f)) leaves through
// ports of the share f. Spread evenly over the wall the ports make it a cloth that reflects ρ (1 − f) and passes f. The
// values of 1 / (1 − ρ (1 − f)) are those of the closed form in tables for integrating spheres (from memory: the
// geometric series).
TEST(Interior, ABallIsAnIntegratingSphere) {
    struct Row {
        double rho, f, gathered;
    };
    for (const Row& row :
         {Row{0.98, 0.05, 14.49275}, {0.90, 0.05, 6.89655}, {0.80, 0.10, 3.57143}, {0.50, 0.10, 1.81818}}) {
        const Construction lantern = ball(0.3, row.rho * (1.0 - row.f), row.f);
        const LightWalk walk(lantern, SphereShape{0.6});
        const WalkTotals totals = walk.follow(40000, 3);
        EXPECT_NEAR(totals.out, row.f * row.gathered, 4.0 * totals.standard_error) << row.rho;
        // The wall's radiance, looked at from the wall: M (1 − f) / (π A) for the wall as a whole.
        WalkNumbers random(5);
        double sum = 0.0;
        double squares = 0.0;
        constexpr int kPaths = 20000;
        for (int i = 0; i < kPaths; ++i) {
            const float x = random.next() - 0.5F;
            const float y = random.next() - 0.5F;
            const Vec3 inward = glm::normalize(Vec3(x, y, -1.0F));
            const auto light = static_cast<double>(walk.radiance_along({0.0F, 0.0F, 0.3F}, inward, false, random));
            sum += light;
            squares += light * light;
        }
        const double mean = sum / kPaths;
        const double error = std::sqrt((squares / kPaths - mean * mean) / kPaths);
        const double area = 4.0 * kPiDouble * 0.09;
        EXPECT_NEAR(mean * kPiDouble * area, row.rho * row.gathered * (1.0 - row.f), 4.0 * error * kPiDouble * area);
    }
}

// F of a centred rectangle, parallel; tables of configuration factors: 0.6 × 0.9 at 1.2 is 0.10527351.
double rectangle_factor(double width, double height, double distance) {
    const double x = 0.5 * width / distance;
    const double y = 0.5 * height / distance;
    const double across = std::sqrt(1.0 + x * x);
    const double along = std::sqrt(1.0 + y * y);
    return 2.0 / kPiDouble * (x / across * std::atan(y / across) + y / along * std::atan(x / along));
}

// From far away a box whose cloth scatters evenly is a uniform rectangle, however bright its middle. Unevenness counts
// by the square of size over distance: (0.45 / 6)² is 0.6 %, and the even part of it is in F already.
TEST(Interior, ABoxFromFarAwayIsAUniformRectangle) {
    EXPECT_NEAR(rectangle_factor(0.6, 0.9, 1.2), 0.10527351, 1e-7);
    Construction box = white_box();
    box.front_cloth->straight = 0.0;
    const auto traced = trace_emission(box, RectangleShape{0.6, 0.9}, 0.1);
    ASSERT_TRUE(traced);
    const double uniform = rectangle_factor(0.6, 0.9, 6.0) / (0.6 * 0.9);
    EXPECT_NEAR(axial_illuminance(traced->table, 6.0) / uniform, 1.0, 0.006);
}

// Light from the focus leaves parallel: a ball of 2 cm at 25 cm spreads by ± 2.3°, facets of slope 0.05 by ± 2 · 2.9°
// at half their height; out of the focus, and from a bowl of the same size, it spreads more.
TEST(Interior, AParabolaCollimatesItsFocus) {
    const Construction focused = parabola(1.3, 0.25);
    const auto beam = trace_emission(focused, DiscShape{1.3}, 0.2);
    ASSERT_TRUE(beam);
    const double opening = degrees(opening_angle(beam->table).value());
    EXPECT_LT(opening, 2.0 * (2.3 + 5.8));
    Construction defocused = focused;
    defocused.tube.before_back_m = 0.37;
    const auto wide = trace_emission(defocused, DiscShape{1.3}, 0.2);
    ASSERT_TRUE(wide);
    EXPECT_GT(degrees(opening_angle(wide->table).value()), 1.5 * opening);
}

// Common practice, no source: the inner cloth, hung a little off the walls, takes the hot spot away.
TEST(Interior, TheInnerClothEvensTheFront) {
    Construction box = white_box();
    box.lining = {true, 0.88, 0.25};
    const auto bare = trace_emission(box, RectangleShape{0.6, 0.9}, 0.1);
    box.inner_cloth = InnerCloth{0.12, 0.05, DiffusingCloth{}};
    const auto evened = trace_emission(box, RectangleShape{0.6, 0.9}, 0.1);
    ASSERT_TRUE(bare && evened);
    EXPECT_GT(hot_spot_stops(bare->table).value(), hot_spot_stops(evened->table).value() + 0.3);
    EXPECT_LT(evened->efficiency, bare->efficiency);
}

// What a cloth takes on the axis of an open box: common practice, no source, 0.7 to 1 stop for the front cloth and 1.5
// to 2 with the inner one. As a soft range, half a stop wider: boxes and cloths differ.
TEST(Interior, ClothsTakeWhatTheTradeSays) {
    Construction box = white_box();
    box.lining = {true, 0.88, 0.25};
    box.front_cloth.reset();
    const ModifierShape front = RectangleShape{0.6, 0.9};
    const auto at_two_metres = [&] {
        const auto traced = trace_emission(box, front, 0.2).value();
        return traced.efficiency * axial_illuminance(traced.table, 2.0);
    };
    const double open = at_two_metres();
    box.front_cloth = DiffusingCloth{};
    const double front_cloth = std::log2(open / at_two_metres());
    box.inner_cloth = InnerCloth{0.12, 0.03, DiffusingCloth{}};
    const double both = std::log2(open / at_two_metres());
    EXPECT_GT(front_cloth, 0.2);
    EXPECT_LT(front_cloth, 1.5);
    EXPECT_GT(both, 1.0);
    EXPECT_LT(both, 2.5);
    EXPECT_GT(both, front_cloth);
}

// The grid's cut-off holds for what leaves the reflector, not for the cells alone: 6.35 mm by 18 mm, 38.86° in all.
TEST(Interior, NoLightLeavesBeyondTheGridsCutOff) {
    Construction reflector = silver_reflector();
    reflector.grid = Grid{Grid::Cells::kRound, 0.00635, 0.018};
    const auto traced = trace_emission(reflector, DiscShape{0.18}, 0.1);
    ASSERT_TRUE(traced);
    EXPECT_GT(mean_intensity(traced->table, radians(0.5 * 38.86 - 1.0)), 0.0);
    EXPECT_EQ(mean_intensity(traced->table, radians(0.5 * 38.86 + 0.01)), 0.0);
}

// The same table, bit by bit, whatever the threads do.
TEST(Interior, IsTheSameForAnyNumberOfThreads) {
    const InteriorCase c = interior_cases().front();
    const auto many = trace_emission(c.construction, c.front, 0.02);
    const tbb::global_control one(tbb::global_control::max_allowed_parallelism, 1);
    const auto alone = trace_emission(c.construction, c.front, 0.02);
    ASSERT_TRUE(many && alone);
    EXPECT_EQ(many->table.values(), alone->table.values());
    EXPECT_EQ(many->efficiency, alone->efficiency);
}

}  // namespace
}  // namespace understudy
