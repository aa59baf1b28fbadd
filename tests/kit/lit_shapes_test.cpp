// Light that is worked out on its real surface: canopies, the overcast sky; and uneven light as it is sampled.
#include <gtest/gtest.h>

#include "kit/head_lit.h"
#include "kit/irradiance.h"
#include "kit/kit_shapes.h"
#include "kit/sky_light.h"
#include "scatter/random_stream.h"

namespace understudy {
namespace {

constexpr LitCloth matt(float reflectance) { return {{reflectance, 0.0F, 0.4F}, {}}; }

// Integrating-sphere theory: within a sphere of radius R every point sees every other equally, so a matt cap of area A
// and reflectance ρ that a lamp gives Φ lm lights itself with ρ Φ / 4πR² / (1 − ρ A / 4πR²) all over. Of a beam that
// falls off as cosⁿ, a cap whose rim lies at the angle a from it catches 1 − cosⁿ⁺¹ a.
TEST(Canopy, AMattOneLightsItselfEvenly) {
    for (const double depth : {0.1, 0.26, 0.5}) {
        for (const float reflectance : {0.5F, 0.9F}) {
            SCOPED_TRACE(depth);
            const UmbrellaShape shape{1.0, depth, UmbrellaShape::Cloth::kWhite, head_at(0.6), 0.01};
            const HeadLit lit(shape, matt(reflectance));
            const double radius = (0.25 + depth * depth) / (2.0 * depth);
            const double sphere = 4.0 * kPiDouble * radius * radius;
            const double cap = 2.0 * kPiDouble * radius * depth;
            const double exponent = std::log(0.5) / std::log(std::cos(radians(35.0)));
            const double cosine = (0.6 - depth) / std::hypot(0.6 - depth, 0.5);
            const double caught = 1.0 - std::pow(cosine, exponent + 1.0);
            const auto rho = static_cast<double>(reflectance);
            const double expected = rho * caught / sphere / (1.0 - rho * cap / sphere);
            for (const float place : {0.0F, 0.3F, 1.0F}) {
                EXPECT_NEAR(static_cast<double>(lit.self_light(place)), expected, 2e-3 * expected);
            }
            // What leaves through the rim, f = 1 − A / 4πR² of all directions: ρ f / (1 − ρ (1 − f)).
            const double open = 1.0 - cap / sphere;
            const double out = caught * rho * open / (1.0 - rho * (1.0 - open));
            EXPECT_NEAR(lit.share_out(), out, 4e-3 * out);
        }
    }
}

// No more leaves than the cloth does not take, and every kind passes on a good part of its head's light.
TEST(Canopy, GivesBackLessThanItGets) {
    for (const NamedShape& named : every_shape()) {
        const auto* umbrella = std::get_if<UmbrellaShape>(&named.shape);
        if (umbrella == nullptr) continue;
        SCOPED_TRACE(named.name);
        const HeadLit lit(*umbrella);
        EXPECT_LT(lit.share_out(), 0.9);
        EXPECT_GT(lit.share_out(), 0.4);
    }
}

// Common practice, no source: silver throws more of its light forward than white, and a brighter middle.
TEST(Canopy, SilverIsHarderThanWhite) {
    const PlacedFront front = slanted_front();
    const auto along_axis = [&](UmbrellaShape::Cloth cloth) {
        const Emitter emitter(UmbrellaShape{1.05, 0.26, cloth, head_at(0.63), 0.18}, front);
        const Vec3 before(front.centre + 3.0 * front.axis);
        return irradiance_of(emitter, before, Vec3(-front.axis), Response::kFlat, 200).mean;
    };
    EXPECT_GT(along_axis(UmbrellaShape::Cloth::kSilver), 1.2 * along_axis(UmbrellaShape::Cloth::kWhite));
}

// Moon and Spencer 1942; ISO 15469:2004: an open horizontal plane under the standard overcast sky receives 7/9 π Lz,
// and, from the integral of the same formula, an upright one (π/2 + 4/3) / 3 Lz from the sky alone, 0.396 of it.
TEST(OvercastSky, LightsPlanesByTheBook) {
    const auto zenith_over_light = [](const Vec3& zenith) {
        const SkyLight sky({1.0, 1.0, 1, 1, 0.0, 0.0, 0.0}, zenith);
        return 1.0 / static_cast<double>(sky.zenith_radiance());  // 1 m² of glass: its illuminance over Lz
    };
    const double horizontal = zenith_over_light({0.0F, 0.0F, -1.0F});
    EXPECT_NEAR(horizontal, 7.0 / 9.0 * kPiDouble, 1e-4);
    const double upright = zenith_over_light({0.0F, 1.0F, 0.0F});
    EXPECT_NEAR(upright, (kPiDouble / 2.0 + 4.0 / 3.0) / 3.0, 1e-3);
    EXPECT_NEAR(upright / horizontal, 0.396, 0.001);
}

// The same through an opening in a roof over a receiver on the floor: ∫∫ L(γ) cos² / r² dA over the opening.
TEST(OvercastSky, ComesThroughARoofWindow) {
    const PlacedFront roof{{0, 1, 0}, {0, -1, 0}, {1, 0, 0}, {0, 0, 1}};
    const Emitter window(WindowShape{2, 2, 1, 1, 0.0, 0.0, 0.0}, roof);
    const double lit =
        irradiance_of(window, Vec3(0.0F), Vec3(0.0F, 1.0F, 0.0F), Response::kFlat, 400).mean *
        static_cast<double>(window.even_radiance() / window.radiance(Vec3(0.0F, 1.0F, 0.0F), Vec3(0.0F, -1.0F, 0.0F)));
    // At the height 1: sin γ = cos = 1 / r.
    double expected = 0.0;
    constexpr int kSide = 1000;
    for (int i = 0; i < kSide * kSide; ++i) {
        const double x = 2.0 * (i % kSide + 0.5) / kSide - 1.0;
        const int row = i / kSide;
        const double y = 2.0 * (row + 0.5) / kSide - 1.0;
        const double r2 = 1.0 + x * x + y * y;
        expected += (1.0 + 2.0 / std::sqrt(r2)) / 3.0 / (r2 * r2) * 4.0 / (kSide * kSide);
    }
    EXPECT_NEAR(lit, expected, 1e-3 * expected);
}

// Seen level into the room, the lower half of the window shows the ground and the upper the sky; bars show nothing.
TEST(Window, ShowsSkyGroundAndBars) {
    const PlacedFront wall{{0, 1.5, 0}, {0, 0, 1}, {1, 0, 0}, {0, 1, 0}};
    const Emitter window(WindowShape{1.2, 1.5, 2, 3, 0.05, 0.0, 0.2}, wall);
    const auto radiance = [&](float x, float y) {
        const Vec3 point(x, y, 0.0F);
        return window.radiance(point, glm::normalize(Vec3(0.0F, 1.5F, 2.0F) - point));
    };
    EXPECT_EQ(radiance(0.0F, 1.6F), 0.0F);   // the upright bar in the middle
    EXPECT_EQ(radiance(0.59F, 1.6F), 0.0F);  // the frame
    EXPECT_GT(radiance(0.3F, 1.6F), 0.0F);
    // Just above the horizon L = Lz / 3, below it 0.2 · 7/9 Lz.
    EXPECT_NEAR(radiance(0.3F, 1.499F) / radiance(0.3F, 1.501F), 0.2 * 7.0 / 9.0 * 3.0, 0.003);
}

// The clever density changes the noise and not the mean: against points drawn evenly.
TEST(UnevenLight, IsSampledWithoutBias) {
    const PlacedFront front = slanted_front();
    for (const NamedShape& named : every_shape()) {
        const Emitter emitter(named.shape, front, named.table);
        for (const Vec3& receiver : receivers_before(front)) {
            SCOPED_TRACE(named.name);
            const Vec3 normal = glm::normalize(Vec3(front.centre) - receiver);
            const double clever = irradiance_of(emitter, receiver, normal, Response::kFlat, 150).mean;
            RandomStream random(31);
            constexpr int kCount = 20000;
            double sum = 0.0;
            double squares = 0.0;
            for (int i = 0; i < kCount; ++i) {
                const Vec3 u = random.next3();
                const EmitterPoint point = emitter.point_at({u.x, u.y}, receiver);
                const Vec3 away = point.position - receiver;
                const float distance = glm::length(away);
                const Vec3 way = away / distance;
                const float facing = -glm::dot(way, point.normal);
                if (facing <= 0.0F || emitter.blocks({receiver, way, 0.0F, distance * 0.9999F})) continue;
                const auto value =
                    static_cast<double>(emitter.radiance(point.position, -way) / emitter.even_radiance() * facing *
                                        std::max(0.0F, glm::dot(way, normal)) * point.area / (distance * distance));
                sum += value / kCount;
                squares += value * value / kCount;
            }
            const double error = std::sqrt(std::max(0.0, squares - sum * sum) / kCount);
            EXPECT_NEAR(clever, sum, 4.5 * error + 2e-3 * sum);
        }
    }
}

// Points spread evenly over a front of which a part h shows nothing bring 0 with the chance h, so that their relative
// variance is at least h / (1 − h). Of a window, h is its bars.
TEST(UnevenLight, IsSeldomSampledOnAWindowsBars) {
    const PlacedFront front = slanted_front();
    const WindowShape window{1.2, 1.5, 2, 3, 0.05, 0.0, 0.2};
    const Emitter emitter(window, front);
    const double glass = (window.width_m - 3 * window.bar_m) * (window.height_m - 4 * window.bar_m);
    const double hidden = 1.0 - glass / (window.width_m * window.height_m);
    for (const double aside : {0.0, 0.1}) {
        const Vec3 receiver(front.centre + 1.3 * front.axis + aside * front.right);
        EXPECT_LT(irradiance_of(emitter, receiver, -Vec3(front.axis), Response::kFlat, 300).relative_variance,
                  0.25 * hidden / (1.0 - hidden));
    }
}

// Guides are made when the first receiver of a cell asks: who it was must not matter, or threads would.
TEST(UnevenLight, IsSampledAlikeWhoeverAsksFirst) {
    const PlacedFront front = slanted_front();
    for (const NamedShape& named : every_shape()) {
        SCOPED_TRACE(named.name);
        const Emitter asked(named.shape, front, named.table);
        const Emitter fresh(named.shape, front, named.table);
        const Vec3 receiver(front.centre + 1.3 * front.axis);
        for (int i = 0; i < 200; ++i) {
            const Vec3 other = receiver + 0.002F * static_cast<float>(i - 100) * Vec3(front.right + front.axis);
            asked.point_at({0.3F, 0.6F}, other);
        }
        for (const Vec2 square : {Vec2(0.1F, 0.2F), Vec2(0.7F, 0.4F), Vec2(0.5F, 0.95F)}) {
            const EmitterPoint a = asked.point_at(square, receiver);
            const EmitterPoint b = fresh.point_at(square, receiver);
            EXPECT_EQ(a.position, b.position);
            EXPECT_EQ(a.area, b.area);
        }
    }
}

// Inverse square, a hundred fronts away: any light is a point.
TEST(UnevenLight, FallsWithTheSquareFarAway) {
    const PlacedFront front = slanted_front();
    for (const NamedShape& named : every_shape()) {
        SCOPED_TRACE(named.name);
        const Emitter emitter(named.shape, front, named.table);
        const auto at = [&](double distance) {
            return irradiance_of(emitter, Vec3(front.centre + distance * front.axis), Vec3(-front.axis),
                                 Response::kFlat, 200)
                .mean;
        };
        // (size / distance)² and the sampling of bars and blades: half a per cent.
        EXPECT_NEAR(at(200.0) / at(400.0), 4.0, 0.02);
    }
}

// A table whose light is the same everywhere and in every direction is a plain rectangle: Howell's catalogue, B-3.
TEST(UnevenLight, AnEvenTableIsThePlainRectangle) {
    const PlacedFront front{{0, 0, 1}, {0, 0, -1}, {-1, 0, 0}, {0, 1, 0}};
    const auto factor = [&](double width, double height) {
        const RectangleShape shape{width, height};
        const Emitter emitter(shape, front, table_of(shape, [](double, double) { return 3.0; }));
        return irradiance_of(emitter, Vec3(0.0F), Vec3(0.0F, 0.0F, 1.0F), Response::kFlat, 300).mean / kPiDouble;
    };
    EXPECT_NEAR(factor(2, 2), 0.55412642, 5e-4 * 0.554);
    EXPECT_NEAR(factor(1, 1), 0.23945647, 5e-4 * 0.239);
    EXPECT_NEAR(factor(0.3, 1.2), 0.09247221, 5e-4 * 0.092);
}

}  // namespace
}  // namespace understudy
