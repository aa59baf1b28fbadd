// Shapes of light: points on them, the way back, and rays that meet them.
#include "kit/emitter.h"

#include <set>

#include <gtest/gtest.h>

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

bool lets_light_both_ways(const ModifierShape& shape) {
    const auto* umbrella = std::get_if<UmbrellaShape>(&shape);
    return std::holds_alternative<SphereShape>(shape) ||
           (umbrella != nullptr && umbrella->cloth == UmbrellaShape::Cloth::kThrough);
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
            const Vec2 square((static_cast<float>(i % kSide) + 0.5F) / kSide,
                              (static_cast<float>(i / kSide) + 0.5F) / kSide);
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
            const Vec2 square((static_cast<float>(i % kSide) + u.x) / kSide,
                              (static_cast<float>(i / kSide) + u.y) / kSide);
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
                const Vec2 square((static_cast<float>(i % kSide) + u.x) / kSide,
                                  (static_cast<float>(i / kSide) + u.y) / kSide);
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
                const Vec2 back = emitter.square_of(emitter.point_at(square, receiver).position, receiver);
                ASSERT_NEAR(back.x, square.x, 2e-3F) << square.x << ' ' << square.y;
                ASSERT_NEAR(back.y, square.y, 2e-3F) << square.x << ' ' << square.y;
            }
        }
    }
}

// Seen from a place before the front, through the rim for a dome, a sampled point is where a ray meets the luminous
// side; past the rim the ray meets the dome's dark outside first.
TEST(Shapes, AreMetWhereTheyAreSampled) {
    const PlacedFront front = slanted_front();
    for (const NamedShape& named : every_shape()) {
        SCOPED_TRACE(named.name);
        const Emitter emitter(named.shape, front, named.table);
        const auto* dome = std::get_if<DomeShape>(&named.shape);
        const bool umbrella = std::holds_alternative<UmbrellaShape>(named.shape);
        RandomStream random(11);
        int met = 0;
        for (const Vec3& receiver : receivers_before(front)) {
            for (int i = 0; i < 3000; ++i) {
                const Vec3 u = random.next3();
                const EmitterPoint point = emitter.point_at({0.002F + 0.996F * u.x, 0.002F + 0.996F * u.y}, receiver);
                const Vec3 away = point.position - receiver;
                const float distance = glm::length(away);
                const auto hit = emitter.intersect({receiver, away / distance});
                if (dome != nullptr) {
                    const Double3 from = Double3(receiver) - front.centre;
                    const double along = glm::dot(from, front.axis);
                    const Double3 way = Double3(away);
                    const Double3 crossing = from - along / glm::dot(way, front.axis) * way;
                    const double room = dome->diameter_m / 2.0 - glm::length(crossing);
                    // On the rim, or along the canopy, a rounding decides.
                    const float slope = glm::dot(away, point.normal) / distance;
                    if (std::abs(room) < 1e-4 || std::abs(slope) < 0.01F) continue;
                    ASSERT_TRUE(hit);
                    if (room < 0.0) {
                        EXPECT_FALSE(hit->luminous);
                        EXPECT_LT(hit->distance, distance + 1e-4F);
                        continue;
                    }
                }
                if (umbrella && -glm::dot(away, point.normal) < 0.05F * distance) continue;  // its dark side, or grazed
                ASSERT_TRUE(hit);
                // Behind its own head, or behind the canopy's other side.
                if (umbrella && hit->distance < 0.999F * distance) continue;
                ++met;
                // A sphere's edge is grazed: a rounding aside moves the meeting along the ray by its square root.
                const float graze = std::max(0.05F, -glm::dot(away, point.normal) / distance);
                ASSERT_NEAR(hit->distance, distance, 2e-6F / graze + 2e-6F);
                ASSERT_TRUE(hit->luminous);
                if (graze > 0.1F) {
                    ASSERT_GT(glm::dot(hit->normal, point.normal), 0.9999F);
                }
            }
        }
        EXPECT_GT(met, 3000);
    }
}

TEST(Shapes, AreDarkBehind) {
    const PlacedFront front = slanted_front();
    const Vec3 behind = Vec3(front.centre - 2.0 * front.axis + 0.2 * front.right);
    for (const NamedShape& named : every_shape()) {
        if (lets_light_both_ways(named.shape)) continue;
        SCOPED_TRACE(named.name);
        const Emitter emitter(named.shape, front, named.table);
        const EmitterPoint point = emitter.point_at({0.4F, 0.3F}, behind);
        const Vec3 way = glm::normalize(point.position - behind);
        const auto hit = emitter.intersect({behind, way});
        ASSERT_TRUE(hit);
        EXPECT_FALSE(hit->luminous);
        EXPECT_FALSE(emitter.density_for(behind, way, Response::kFlat));
        EXPECT_FALSE(emitter.density_for(behind, way, Response::kDome));
    }
}

TEST(Shapes, ARayEndsBeforeOrAfterThem) {
    const Emitter disc(DiscShape{0.5}, front_at({0.0, 0.0, 1.0}, {0.0, 0.0, -1.0}));
    const Vec3 up(0.0F, 0.0F, 1.0F);
    EXPECT_TRUE(disc.intersect({Vec3(0.0F), up}));
    EXPECT_FALSE(disc.intersect({Vec3(0.0F), up, 0.0F, 0.999F}));
    EXPECT_FALSE(disc.intersect({Vec3(0.0F), up, 1.001F}));
    EXPECT_FALSE(disc.intersect({Vec3(0.26F, 0.0F, 0.0F), up}));
    EXPECT_FALSE(disc.intersect({Vec3(0.0F), Vec3(1.0F, 0.0F, 0.0F)}));
}

TEST(Shapes, ARingIsOpenInItsMiddle) {
    const Emitter ring(RingShape{0.4, 0.2}, front_at({0.0, 0.0, 1.0}, {0.0, 0.0, -1.0}));
    const Vec3 up(0.0F, 0.0F, 1.0F);
    EXPECT_FALSE(ring.intersect({Vec3(0.099F, 0.0F, 0.0F), up}));
    EXPECT_TRUE(ring.intersect({Vec3(0.101F, 0.0F, 0.0F), up}));
    EXPECT_TRUE(ring.intersect({Vec3(0.0F, -0.199F, 0.0F), up}));
    EXPECT_FALSE(ring.intersect({Vec3(0.0F, -0.201F, 0.0F), up}));
}

// The octagon of the trade stands on a side: its flat is (cos 22.5°) of its corner from the middle.
TEST(Shapes, AnOctagonStandsOnASide) {
    const Emitter octagon(PolygonShape{8, 1.0}, front_at({0.0, 0.0, 1.0}, {0.0, 0.0, -1.0}));
    const auto meets = [&](float x, float y) {
        return octagon.intersect({Vec3(x, y, 0.0F), Vec3(0.0F, 0.0F, 1.0F)}).has_value();
    };
    const auto flat = static_cast<float>(0.5 * std::cos(kPiDouble / 8.0));
    for (const float sign : {-1.0F, 1.0F}) {
        EXPECT_TRUE(meets(0.0F, sign * (flat - 0.001F)));
        EXPECT_FALSE(meets(0.0F, sign * (flat + 0.001F)));
        EXPECT_TRUE(meets(sign * (flat - 0.001F), 0.0F));
        EXPECT_FALSE(meets(sign * (flat + 0.001F), 0.0F));
    }
}

// The edge as it is seen: on a flat front's border, and where lines of sight graze a sphere.
TEST(Shapes, ShowTheirOutline) {
    const PlacedFront front = slanted_front();
    const Vec3 eye = receivers_before(front)[1];
    for (const NamedShape& named : every_shape()) {
        SCOPED_TRACE(named.name);
        const Emitter emitter(named.shape, front, named.table);
        const auto points = emitter.outline(eye, 64);
        ASSERT_EQ(points.size(), 64U);
        for (const Vec3& point : points) {
            const Vec3 out = point - Vec3(front.centre);
            const auto sees = [&](float share) {
                const Vec3 way = glm::normalize(Vec3(front.centre) + share * out - eye);
                return emitter.intersect({eye, way}).has_value();
            };
            if (!lets_light_both_ways(named.shape) || std::holds_alternative<SphereShape>(named.shape)) {
                EXPECT_TRUE(sees(0.99F));
            }
            // A sphere's outline lies nearer than its middle, so a step outward shows past it all the more.
            const bool canopy =
                std::holds_alternative<DomeShape>(named.shape) || std::holds_alternative<UmbrellaShape>(named.shape);
            EXPECT_FALSE(sees(1.02F) && !canopy);
            if (std::holds_alternative<SphereShape>(named.shape)) {
                EXPECT_NEAR(glm::dot(glm::normalize(out), glm::normalize(eye - point)), 0.0F, 1e-3F);
            }
        }
    }
}

// The dome receptor's answer to light from θ off its axis is (1 + cos θ) / 2; a flat one's is cos θ and nothing from
// behind. 60° and 120° by hand.
TEST(Receptors, AnswerByTheirShape) {
    EXPECT_FLOAT_EQ(response_to(Response::kFlat, 0.5F), 0.5F);
    EXPECT_FLOAT_EQ(response_to(Response::kFlat, -0.5F), 0.0F);
    EXPECT_FLOAT_EQ(response_to(Response::kDome, 0.5F), 0.75F);
    EXPECT_FLOAT_EQ(response_to(Response::kDome, -0.5F), 0.25F);
}

}  // namespace
}  // namespace understudy
