// How much light reaches a point from fronts whose configuration factors are known in closed form: E = π L F.
//
// Disc, rectangle, sphere: Howell, "A Catalog of Radiation Heat Transfer Configuration Factors" (B-12, B-3, B-4, B-38
// and neighbours) and Siegel & Howell, "Thermal Radiation Heat Transfer"; polygon: Lambert, Photometria, 1760. The
// formulas stand here, so that a printed digit that is wrong shows.
#include <array>

#include <gtest/gtest.h>

#include "kit/irradiance.h"
#include "kit/kit_shapes.h"

namespace understudy {
namespace {

const Vec3 kOrigin(0.0F);
const Vec3 kUp(0.0F, 0.0F, 1.0F);

// A front over the receiver at the origin, looking straight down.
PlacedFront above(double x, double y, double z) { return {{x, y, z}, {0, 0, -1}, {-1, 0, 0}, {0, 1, 0}}; }

double factor(const ModifierShape& shape, const PlacedFront& front, const Vec3& normal = kUp, int side = 800) {
    return irradiance_of(Emitter(shape, front), kOrigin, normal, Response::kFlat, side).mean / kPiDouble;
}

Vec3 tilted(double degrees_off) {
    return {static_cast<float>(std::sin(radians(degrees_off))), 0.0F,
            static_cast<float>(std::cos(radians(degrees_off)))};
}

constexpr double kClose = 1e-4;  // relative: the grid's error, larger where a horizon cuts the front

TEST(ConfigurationFactor, DiscOnItsAxis) {
    EXPECT_NEAR(factor(DiscShape{1.0}, above(0, 0, 1)), 0.20000000, 0.20 * kClose);
    EXPECT_NEAR(factor(DiscShape{0.9}, above(0, 0, 1.5)), 0.08256881, 0.083 * kClose);
    EXPECT_NEAR(factor(DiscShape{2.0}, above(0, 0, 1)), 0.50000000, 0.5 * kClose);
    EXPECT_NEAR(factor(DiscShape{0.5}, above(0, 0, 1)), 0.05882353, 0.059 * kClose);
}

// cos ω R² / (R² + h²) while the whole disc is above the receiver's horizon.
TEST(ConfigurationFactor, DiscBeforeATiltedReceiver) {
    EXPECT_NEAR(factor(DiscShape{1.0}, above(0, 0, 1), tilted(30)), 0.17320508, 0.173 * kClose);
    EXPECT_NEAR(factor(DiscShape{1.0}, above(0, 0, 1), tilted(45)), 0.14142136, 0.141 * kClose);
    EXPECT_NEAR(factor(DiscShape{1.0}, above(0, 0, 1), tilted(60)), 0.10000000, 0.1 * kClose);
}

TEST(ConfigurationFactor, DiscOffItsAxis) {
    struct Case {
        double radius, height, aside, printed;
    };
    const auto cases = std::to_array<Case>({{0.5, 1.0, 0.5, 0.14644661},
                                            {0.5, 1.0, 1.0, 0.06587843},
                                            {0.5, 1.5, 1.0, 0.05278640},
                                            {0.45, 1.2, 0.3, 0.11214416},
                                            {1.0, 2.0, 0.25, 0.19604475}});
    for (const Case& c : cases) {
        const double h = c.height / c.aside;
        const double r = c.radius / c.aside;
        const double z = 1.0 + h * h + r * r;
        const double f = 0.5 * (1.0 - (z - 2.0 * r * r) / std::sqrt(z * z - 4.0 * r * r));
        ASSERT_NEAR(f, c.printed, 1e-8);
        EXPECT_NEAR(factor(DiscShape{2.0 * c.radius}, above(c.aside, 0, c.height)), f, f * kClose);
        EXPECT_NEAR(factor(DiscShape{2.0 * c.radius}, above(0, -c.aside, c.height)), f, f * kClose);
    }
}

// A ring is a disc less a disc.
TEST(ConfigurationFactor, RingIsADiscLessADisc) {
    EXPECT_NEAR(factor(RingShape{1.0, 0.5}, above(0, 0, 1)), 0.20000000 - 0.05882353, 0.14 * kClose);
}

TEST(ConfigurationFactor, RectangleParallel) {
    EXPECT_NEAR(factor(RectangleShape{2, 2}, above(0, 0, 1)), 0.55412642, 0.55 * kClose);
    EXPECT_NEAR(factor(RectangleShape{1, 1}, above(0, 0, 1)), 0.23945647, 0.24 * kClose);
    EXPECT_NEAR(factor(RectangleShape{0.3, 1.2}, above(0, 0, 1)), 0.09247221, 0.092 * kClose);
    EXPECT_NEAR(factor(RectangleShape{0.6, 0.9}, above(0, 0, 1.2)), 0.10527351, 0.105 * kClose);
    // Over one corner only.
    EXPECT_NEAR(factor(RectangleShape{1, 1}, above(0.5, 0.5, 1)), 0.13853161, 0.139 * kClose);
    EXPECT_NEAR(factor(RectangleShape{0.3, 0.45}, above(0.15, 0.225, 1.2)), 0.02631838, 0.026 * kClose);
}

// The lower edge in the receiver's plane, the receiver opposite one corner. a high, b wide, c away.
TEST(ConfigurationFactor, RectanglePerpendicular) {
    struct Case {
        double a, b, c, f;
    };
    const auto cases = std::to_array<Case>(
        {{1, 1, 1, 0.05573420}, {1, 2, 0.5, 0.13548840}, {1.2, 0.3, 1, 0.02705396}, {2, 1, 1.5, 0.05724784}});
    for (const Case& c : cases) {
        const PlacedFront front{{0.5 * c.b, c.c, 0.5 * c.a}, {0, -1, 0}, {1, 0, 0}, {0, 0, 1}};
        EXPECT_NEAR(factor(RectangleShape{c.b, c.a}, front, kUp, 2000), c.f, c.f * kClose);
    }
    // As much again hangs below the horizon and gives nothing.
    const PlacedFront half{{0.5, 1, 0}, {0, -1, 0}, {1, 0, 0}, {0, 0, 1}};
    EXPECT_NEAR(factor(RectangleShape{1, 2}, half), 0.05573420, 0.056 * 3e-4);
}

TEST(ConfigurationFactor, PolygonByLambert) {
    EXPECT_NEAR(factor(PolygonShape{8, 1.0}, above(0, 0, 1)), 0.18366372, 0.184 * kClose);
    // F = 1 / 2π Σ Θ Γ·n for any regular polygon overhead: n equal edges.
    for (const int sides : {3, 5, 6, 64}) {
        const double half = kPiDouble / sides;
        const double flat = 0.5 * std::cos(half);
        const double angle = 2.0 * std::atan(0.5 * std::sin(half) / std::hypot(1.0, flat));
        const double f = sides * angle * flat / std::hypot(1.0, flat) / (2.0 * kPiDouble);
        EXPECT_NEAR(factor(PolygonShape{sides, 1.0}, above(0, 0, 1)), f, f * kClose) << sides;
    }
}

TEST(ConfigurationFactor, SphereCutByTheHorizon) {
    struct Case {
        double h, beta, f;
    };
    const auto cases = std::to_array<Case>({{2, 0, 0.25},
                                            {4, 0, 0.0625},
                                            {10, 0, 0.01},
                                            {2, 45, 0.17677670},
                                            {2, 70, 0.087655},
                                            {2, 90, 0.028834},
                                            {1.5, 90, 0.074110}});
    for (const Case& c : cases) {
        SCOPED_TRACE(c.beta);
        const double tolerance = std::max(c.f * kClose, 0.6e-6) + (c.beta > 45 ? 5e-4 * c.f : 0.0);
        EXPECT_NEAR(factor(SphereShape{2.0}, above(0, 0, c.h), tilted(c.beta)), c.f, tolerance);
    }
}

// A canopy whose hollow side is evenly bright shows through its rim what a disc in the rim would (radiance is the same
// along a ray).
TEST(ConfigurationFactor, DomeIsTheDiscOfItsRim) {
    for (const double depth : {0.1, 0.3, 0.5}) {
        SCOPED_TRACE(depth);
        EXPECT_NEAR(factor(DomeShape{1.0, depth}, above(0, 0, 1)), 0.20000000, 0.2 * kClose);
        // From aside the near rim hides a part: its edge is a jump in the grid.
        EXPECT_NEAR(factor(DomeShape{1.0, depth}, above(0.5, 0, 1)), 0.14644661, 0.146 * 1e-3);
        EXPECT_NEAR(factor(DomeShape{1.0, depth}, above(1.0, 0, 1)), 0.06587843, 0.066 * 2e-3);
    }
}

// A receptor over which light of radiance 1 comes from everywhere gets 2π at a dome receptor; a disc that fills a cone
// of half angle a round the axis gives 2π ∫ (1 + c) / 2 dc = π [(1 − cos a) + sin² a / 2].
TEST(ConfigurationFactor, DomeReceptorBeforeADisc) {
    const double cosine = 1.0 / std::sqrt(1.25);
    const double expected = kPiDouble * ((1.0 - cosine) + 0.5 * (1.0 - cosine * cosine));
    const Emitter disc(DiscShape{1.0}, above(0, 0, 1));
    EXPECT_NEAR(irradiance_of(disc, kOrigin, kUp, Response::kDome).mean, expected, expected * kClose);
    // Behind the receptor: π [(1 − cos a) − sin² a / 2].
    const double behind = kPiDouble * ((1.0 - cosine) - 0.5 * (1.0 - cosine * cosine));
    EXPECT_NEAR(irradiance_of(disc, kOrigin, -kUp, Response::kDome).mean, behind, behind * 1e-3);
}

// Warped samples: Hart and others, EGSR 2020. A square box 70° off the receiver's axis has a relative variance of .15
// when its area or its solid angle is sampled evenly; the 3 × 3 warp takes that below a hundredth.
TEST(ConfigurationFactor, SamplesHaveLittleVariance) {
    const Vec3 normal = tilted(70);
    const Emitter box(RectangleShape{0.6, 0.6}, above(0, 0, 1.2));
    EXPECT_LT(irradiance_of(box, kOrigin, normal, Response::kFlat).relative_variance, 0.01);
    EXPECT_LT(irradiance_of(box, kOrigin, kUp, Response::kFlat).relative_variance, 0.01);
    const Emitter globe(SphereShape{0.4}, above(0, 0, 1.2));
    EXPECT_LT(irradiance_of(globe, kOrigin, normal, Response::kFlat).relative_variance, 0.01);
    EXPECT_LT(irradiance_of(globe, kOrigin, kUp, Response::kFlat).relative_variance, 0.01);
}

}  // namespace
}  // namespace understudy
