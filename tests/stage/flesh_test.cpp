// What a walk under the skin asks of the sitter: the free distance against every triangle, and the walls.
#include "stage/flesh.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "scatter/microfacet.h"
#include "scatter/random_stream.h"
#include "scatter/skin_walk.h"
#include "support/ball_of_skin.h"

namespace understudy {
namespace {

// C. Ericson, Real-Time Collision Detection, 2005, section 5.1.5, in double precision.
double distance_to_triangle(const Double3& p, const Double3& a, const Double3& b, const Double3& c) {
    const Double3 ab = b - a;
    const Double3 ac = c - a;
    const auto to_edge = [&](const Double3& from, const Double3& edge) {
        const double t = std::clamp(glm::dot(p - from, edge) / glm::dot(edge, edge), 0.0, 1.0);
        return glm::length(p - from - t * edge);
    };
    const Double3 n = glm::cross(ab, ac);
    const auto beyond = [&](const Double3& from, const Double3& edge) {
        return glm::dot(glm::cross(edge, p - from), n) < 0.0;
    };
    const double edges = std::min({to_edge(a, ab), to_edge(b, c - b), to_edge(c, a - c)});
    if (beyond(a, ab) || beyond(b, c - b) || beyond(c, a - c)) return edges;
    return std::abs(glm::dot(p - a, n)) / glm::length(n);
}

const Vec3 kMiddle(0.1F, 1.2F, -0.05F);

SitterMesh ball(int rings) { return ball_of_skin(rings, kMiddle, 0.03F); }

// The promise that spares rays: never more than is really free, whatever the triangles; and worth asking for, within
// half a millimetre of what a fine mesh leaves free up to where the grid ends.
TEST(DistanceGrid, NeverPromisesMoreThanIsFree) {
    RandomStream random(11);
    for (const int rings : {6, 20, 90}) {
        const SitterMesh mesh = ball(rings);
        const DistanceGrid grid(mesh.positions, mesh.triangles);
        double lost = 0.0;
        int near = 0;
        for (int i = 0; i < 300; ++i) {
            const Vec3 p = kMiddle + 0.064F * (random.next3() - 0.5F);
            double exact = 1.0;
            for (const auto& [a, b, c] : mesh.triangles) {
                exact = std::min(exact, distance_to_triangle(Double3(p), Double3(mesh.positions[a]),
                                                             Double3(mesh.positions[b]), Double3(mesh.positions[c])));
            }
            const auto promised = static_cast<double>(grid.free_around(p));
            ASSERT_LE(promised, exact + 1e-7);
            if (exact > 0.001 && exact < 0.005) {
                lost += exact - promised;
                ++near;
            }
        }
        if (rings == 90) {
            EXPECT_LT(lost / near, 0.5e-3);
        }
    }
}

TEST(DistanceGrid, PromisesNothingOffItsBox) {
    const SitterMesh mesh = ball(20);
    const DistanceGrid grid(mesh.positions, mesh.triangles);
    EXPECT_EQ(grid.free_around({0.0F, 0.0F, 0.0F}), 0.0F);
    EXPECT_EQ(grid.free_around({0.1F, 1.2F, 0.5F}), 0.0F);
}

// Only skin is a wall; cloth and the mouth's inside are not. From within and from without are told apart.
TEST(Flesh, HasWallsOfSkinOnly) {
    Sitter sitter;
    sitter.mesh = ball(20);
    const Flesh flesh(sitter);
    const auto out = flesh.wall({kMiddle, Vec3(0.6F, 0.0F, 0.8F)});
    ASSERT_TRUE(out);
    EXPECT_TRUE(flesh.contains(*out));
    EXPECT_NEAR(out->distance, 0.03F, 0.0005F);
    const auto in = flesh.wall({kMiddle + Vec3(0.0F, 0.003F, 0.1F), Vec3(0.0F, 0.0F, -1.0F)});
    ASSERT_TRUE(in);
    EXPECT_FALSE(flesh.contains(*in));
    for (const Zone zone : {Zone::kTop, Zone::kMouth, Zone::kSocket, Zone::kTeeth}) {
        sitter.mesh.zones.assign(sitter.mesh.triangles.size(), zone);
        EXPECT_FALSE(Flesh(sitter).wall({kMiddle, Vec3(0.6F, 0.0F, 0.8F)}));
    }
}

// White furnace: in even light from everywhere, a ball of skin that takes nothing up is as bright as the light; the
// free distance changes nothing but the rays.
TEST(Flesh, LosesNothingInAWhiteFurnace) {
    Sitter sitter;
    sitter.mesh = ball(60);
    const Flesh flesh(sitter);
    const SkinMedium medium{all_four(1.0F), 1.0F / Four{4e-3F, 3e-3F, 5e-3F, 4e-3F}};
    constexpr int kWalks = 20000;
    for (const WalkTuning& tuning : {WalkTuning{}, WalkTuning{0.75F, true, false}}) {
        Four sum{};
        Four squares{};
        int rays = 0;
        int steps = 0;
        int given_up = 0;
        for (int i = 0; i < kWalks; ++i) {
            SkinWalkNumbers numbers(77U + 7919U * static_cast<std::uint32_t>(i));
            const float u = numbers.next();
            const Vec3 outward(0.0F, 0.0F, 1.0F);
            const WalkStart start{kMiddle + 0.02995F * outward, outward, -sample_cosine(u, numbers.next())};
            const auto result = walk_through_skin(medium, start, flesh, numbers, tuning);
            rays += result.rays;
            steps += result.steps;
            given_up += result.end == WalkEnd::kEmerged || result.end == WalkEnd::kTakenUp ? 0 : 1;
            if (result.end != WalkEnd::kEmerged) continue;
            sum += result.throughput / static_cast<float>(kWalks);
            squares += result.throughput * result.throughput / static_cast<float>(kWalks);
        }
        for (int k = 0; k < 4; ++k) {
            const float error = std::sqrt(std::max(0.0F, squares[k] - sum[k] * sum[k]) / kWalks);
            EXPECT_NEAR(sum[k], 1.0F, 3.5F * error + 0.002F) << k;
        }
        EXPECT_LT(given_up, kWalks / 500);
        if (tuning.by_distance) {
            EXPECT_LT(rays, 9 * steps / 10);
        }
    }
}

}  // namespace
}  // namespace understudy
