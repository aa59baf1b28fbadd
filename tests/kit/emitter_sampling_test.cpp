// Points on shapes of light: even over the surface, and found again from their place.
#include <array>
#include <set>

#include <gtest/gtest.h>

#include "kit/emitter.h"
#include "kit/kit_shapes.h"
#include "scatter/random_stream.h"

namespace understudy {
namespace {

TEST(Shapes, AllAreTested) {
    // All but the point, which has no surface: what it gives is tested from the scene file to the meter.
    static_assert(std::variant_size_v<ModifierShape> == 10, "add the new shape to every_shape()");
    std::set<std::size_t> tested;
    for (const NamedShape& named : every_shape()) tested.insert(named.shape.index());
    EXPECT_EQ(tested.size(), std::variant_size_v<ModifierShape> - 1);
}

// The areas of plane and solid geometry; a cap's is π (rim² + depth²).
double area_by_the_book(const ModifierShape& shape) {
    if (const auto* s = std::get_if<RectangleShape>(&shape)) return s->width_m * s->height_m;
    if (const auto* s = std::get_if<DiscShape>(&shape)) return kPiDouble * s->diameter_m * s->diameter_m / 4.0;
    if (const auto* s = std::get_if<RingShape>(&shape)) {
        return kPiDouble * (s->diameter_m * s->diameter_m - s->inner_m * s->inner_m) / 4.0;
    }
    if (const auto* s = std::get_if<PolygonShape>(&shape)) {
        return s->sides * s->diameter_m * s->diameter_m / 8.0 * std::sin(2.0 * kPiDouble / s->sides);
    }
    if (const auto* s = std::get_if<FrameShape>(&shape)) return s->width_m * s->height_m;
    if (const auto* s = std::get_if<WindowShape>(&shape)) return s->width_m * s->height_m;
    const auto cap = [](const auto& s) {
        return kPiDouble * (s.diameter_m * s.diameter_m / 4.0 + s.depth_m * s.depth_m);
    };
    if (const auto* s = std::get_if<UmbrellaShape>(&shape)) return cap(*s);
    return cap(std::get<DomeShape>(shape));
}

TEST(Shapes, HaveTheirAreas) {
    const PlacedFront front = slanted_front();
    for (const NamedShape& named : every_shape()) {
        SCOPED_TRACE(named.name);
        if (std::holds_alternative<SphereShape>(named.shape)) continue;  // below
        const Emitter emitter(named.shape, front, named.table);
        for (const Vec3& receiver : receivers_before(front)) {
            const double area = area_by_the_book(named.shape);
            // The square of an uneven light is stretched, here more and there less: the area of the whole remains.
            constexpr int kSide = 300;
            RandomStream random(15);
            double mean = 0.0;
            double squares = 0.0;
            for (int i = 0; i < kSide * kSide; ++i) {
                const Vec3 u = random.next3();
                const auto one = static_cast<double>(emitter.point_at({u.x, u.y}, receiver).area);
                mean += one / (kSide * kSide);
                squares += one * one / (kSide * kSide);
            }
            const double error = std::sqrt(std::max(0.0, squares - mean * mean)) / kSide;
            EXPECT_NEAR(mean, area, 4.0 * error + 1e-5 * area);
        }
    }
}

// Points of even squares fall evenly on the surface: the mean of a quantity over them is its mean over the area.
// Known means: a rectangle's second moments w² / 12 and h² / 12; a disc's and a ring's (R² + r²) / 4 along any
// diameter; a regular polygon's R² (2 + cos(2π / n)) / 12 (handbooks' moments of inertia).
TEST(Shapes, AreSampledEvenly) {
    const PlacedFront front = slanted_front();
    constexpr int kSide = 1000;
    for (const NamedShape& named : every_shape()) {
        SCOPED_TRACE(named.name);
        double across = 0.0;
        double upright = 0.0;
        if (const auto* s = std::get_if<RectangleShape>(&named.shape)) {
            across = s->width_m * s->width_m / 12.0;
            upright = s->height_m * s->height_m / 12.0;
        } else if (const auto* disc = std::get_if<DiscShape>(&named.shape)) {
            across = upright = disc->diameter_m * disc->diameter_m / 16.0;
        } else if (const auto* ring = std::get_if<RingShape>(&named.shape)) {
            across = upright = (ring->diameter_m * ring->diameter_m + ring->inner_m * ring->inner_m) / 16.0;
        } else if (const auto* polygon = std::get_if<PolygonShape>(&named.shape)) {
            across = upright =
                polygon->diameter_m * polygon->diameter_m / 48.0 * (2.0 + std::cos(2.0 * kPiDouble / polygon->sides));
        } else {
            continue;  // caps: below
        }
        if (named.table) continue;  // evenly in light, not in area
        const Emitter emitter(named.shape, front, named.table);
        double across_sum = 0.0;
        double upright_sum = 0.0;
        for (int i = 0; i < kSide * kSide; ++i) {
            const int row = i / kSide;
            const Vec2 square((static_cast<float>(i % kSide) + 0.5F) / kSide, (static_cast<float>(row) + 0.5F) / kSide);
            const Double3 away = Double3(emitter.point_at(square, Vec3(0.0F)).position) - front.centre;
            across_sum += std::pow(glm::dot(away, front.right), 2.0);
            upright_sum += std::pow(glm::dot(away, front.up), 2.0);
        }
        EXPECT_NEAR(across_sum / (kSide * kSide), across, 1e-4 * across);
        EXPECT_NEAR(upright_sum / (kSide * kSide), upright, 1e-4 * upright);
    }
}

// Archimedes: equal heights of a sphere have equal areas, so the height on a canopy is even between its ends.
TEST(Shapes, CanopiesAreSampledEvenly) {
    const PlacedFront front = slanted_front();
    constexpr int kSide = 400;
    for (const double depth : {0.2, 0.5}) {
        SCOPED_TRACE(depth);
        const Emitter emitter(DomeShape{1.0, depth}, front);
        std::array<double, 10> counts{};
        RandomStream random(13);
        Double3 aside(0.0);
        for (int i = 0; i < kSide * kSide; ++i) {
            const Vec3 u = random.next3();
            const int row = i / kSide;
            const Vec2 square((static_cast<float>(i % kSide) + u.x) / kSide, (static_cast<float>(row) + u.y) / kSide);
            const Double3 point = Double3(emitter.point_at(square, Vec3(0.0F)).position) - front.centre;
            const double height = -glm::dot(point, front.axis);
            aside += (point + height * front.axis) / static_cast<double>(kSide * kSide);
            // 0 in the rim, depth in the middle
            counts[static_cast<std::size_t>(std::clamp(height / depth, 0.0, 0.9999) * 10.0)] += 1.0 / (kSide * kSide);
        }
        for (const double count : counts) EXPECT_NEAR(count, 0.1, 0.001);
        EXPECT_LT(glm::length(aside), 1e-4);
    }
}

// Equal heights of the unit sphere of directions have equal solid angles. The cone's half angle has the sine R / d; its
// solid angle is 2π (1 − cos), and dA cos / d² of every point is that.
TEST(Shapes, SpheresAreSampledEvenlyInSolidAngle) {
    const PlacedFront front = slanted_front();
    constexpr int kSide = 400;
    for (const double diameter : {0.06, 0.4}) {
        for (const Vec3& receiver : receivers_before(front)) {
            const Emitter emitter(SphereShape{diameter}, front);
            const Double3 to_centre = front.centre - Double3(receiver);
            const double sine = 0.5 * diameter / glm::length(to_centre);
            const double depth = 1.0 - std::sqrt(1.0 - sine * sine);
            std::array<double, 10> counts{};
            RandomStream random(14);
            for (int i = 0; i < kSide * kSide; ++i) {
                const Vec3 u = random.next3();
                const int row = i / kSide;
                const Vec2 square((static_cast<float>(i % kSide) + u.x) / kSide,
                                  (static_cast<float>(row) + u.y) / kSide);
                const EmitterPoint point = emitter.point_at(square, receiver);
                const Double3 away = Double3(point.position) - Double3(receiver);
                ASSERT_NEAR(glm::length(Double3(point.position) - front.centre), 0.5 * diameter, 1e-6);
                const double cosine = glm::dot(glm::normalize(away), glm::normalize(to_centre));
                const double share = std::clamp((1.0 - cosine) / depth, 0.0, 0.9999);
                counts[static_cast<std::size_t>(share * 10.0)] += 1.0 / (kSide * kSide);
                const double facing = -glm::dot(glm::normalize(away), Double3(point.normal));
                if (facing < 0.05) continue;
                ASSERT_NEAR(static_cast<double>(point.area) * facing / glm::dot(away, away) / (2.0 * kPiDouble * depth),
                            1.0, 1e-3);
            }
            for (const double count : counts) EXPECT_NEAR(count, 0.1, 0.001);
        }
    }
}

bool leads_back(const Emitter& emitter, const Vec2& square, const Vec3& receiver) {
    const Vec2 off = emitter.square_of(emitter.point_at(square, receiver).position, receiver) - square;
    return std::max(std::abs(off.x), std::abs(off.y)) < 2e-3F;
}

TEST(Shapes, KnowTheSquareOfAPoint) {
    const PlacedFront front = slanted_front();
    for (const NamedShape& named : every_shape()) {
        SCOPED_TRACE(named.name);
        const Emitter emitter(named.shape, front, named.table);
        RandomStream random(7);
        for (const Vec3& receiver : receivers_before(front)) {
            for (int i = 0; i < 5000; ++i) {
                const Vec3 u = random.next3();
                const Vec2 square(u.x, u.y);
                // Each of a guide's rows is spread by itself: a place between two may, by a rounding, be taken for the
                // other's, but not once it is moved a little.
                constexpr Vec2 kAside(0.0F, 1e-4F);
                ASSERT_TRUE(leads_back(emitter, square, receiver) || (leads_back(emitter, square + kAside, receiver) &&
                                                                      leads_back(emitter, square - kAside, receiver)))
                    << square.x << ' ' << square.y;
            }
        }
    }
}

}  // namespace
}  // namespace understudy
