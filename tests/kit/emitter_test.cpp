// Shapes of light: rays that meet them, their dark sides and their edges.
#include "kit/emitter.h"

#include <gtest/gtest.h>

#include "kit/kit_shapes.h"
#include "scatter/random_stream.h"

namespace understudy {
namespace {

bool lets_light_both_ways(const ModifierShape& shape) {
    const auto* umbrella = std::get_if<UmbrellaShape>(&shape);
    return std::holds_alternative<SphereShape>(shape) ||
           (umbrella != nullptr && umbrella->cloth == UmbrellaShape::Cloth::kThrough);
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
