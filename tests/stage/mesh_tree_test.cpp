// The mesh tree against every triangle one by one.
#include "stage/mesh_tree.h"

#include <gtest/gtest.h>

#include "scatter/random_stream.h"

namespace understudy {
namespace {

SitterMesh triangle_soup(int count) {
    RandomStream random(5);
    SitterMesh mesh;
    for (int i = 0; i < count; ++i) {
        const Vec3 middle = random.next3();
        std::array<std::uint32_t, 3> triangle{};
        for (auto& corner : triangle) {
            corner = static_cast<std::uint32_t>(mesh.positions.size());
            mesh.positions.push_back(middle + 0.3F * (random.next3() - 0.5F));
        }
        const Vec3 normal = glm::normalize(glm::cross(mesh.positions[triangle[1]] - mesh.positions[triangle[0]],
                                                      mesh.positions[triangle[2]] - mesh.positions[triangle[0]]));
        for (int k = 0; k < 3; ++k) mesh.normals.push_back(normal);
        mesh.triangles.push_back(triangle);
        mesh.zones.push_back(static_cast<Zone>(i % static_cast<int>(Zone::kCount)));
    }
    return mesh;
}

struct Nearest {
    double distance = std::numeric_limits<double>::infinity();
    double margin = 0.0;  // of the smallest share of a corner: how far from an edge
    std::uint32_t triangle = 0;
};

// Möller and Trumbore, "Fast, Minimum Storage Ray-Triangle Intersection", JGT 2(1), 1997, in double precision.
std::optional<Nearest> try_every_triangle(const SitterMesh& mesh, const Ray& ray) {
    std::optional<Nearest> nearest;
    for (std::uint32_t i = 0; i < mesh.triangles.size(); ++i) {
        const Double3 a(mesh.positions[mesh.triangles[i][0]]);
        const Double3 e1 = Double3(mesh.positions[mesh.triangles[i][1]]) - a;
        const Double3 e2 = Double3(mesh.positions[mesh.triangles[i][2]]) - a;
        const Double3 way(ray.direction);
        const Double3 p = glm::cross(way, e2);
        const double determinant = glm::dot(e1, p);
        if (determinant == 0.0) continue;
        const Double3 t = Double3(ray.origin) - a;
        const double u = glm::dot(t, p) / determinant;
        const Double3 q = glm::cross(t, e1);
        const double v = glm::dot(way, q) / determinant;
        const double distance = glm::dot(e2, q) / determinant;
        const double margin = std::min({u, v, 1.0 - u - v});
        if (margin < 0.0 || distance <= static_cast<double>(ray.near) || distance >= static_cast<double>(ray.far)) {
            continue;
        }
        if (!nearest || distance < nearest->distance) nearest = Nearest{distance, margin, i};
    }
    return nearest;
}

TEST(MeshTree, AgreesWithEveryTriangleTried) {
    const SitterMesh mesh = triangle_soup(200);
    const MeshTree tree(mesh);
    RandomStream random(6);
    int met = 0;
    int odd = 0;  // a rounding at an edge may decide otherwise, now and then
    for (int i = 0; i < 10000; ++i) {
        const Vec3 from = 3.0F * (random.next3() - 0.5F) + 0.5F;
        const Vec3 to = random.next3();
        const Ray ray{from, glm::normalize(to - from), 0.0F, i % 2 == 0 ? kInfinity : 1.2F};
        const auto expected = try_every_triangle(mesh, ray);
        const auto hit = tree.intersect(ray);
        ASSERT_EQ(tree.blocks(ray), hit.has_value());
        if (expected.has_value() != hit.has_value() || (hit && hit->triangle != expected->triangle)) {
            ++odd;
            continue;
        }
        if (!hit) continue;
        ++met;
        ASSERT_NEAR(static_cast<double>(hit->distance), expected->distance, 2e-5);
        ASSERT_LT(glm::length(hit->position - ray.at(hit->distance)), 2e-5F);
        ASSERT_NEAR(std::abs(glm::dot(hit->geometric, mesh.normals[mesh.triangles[hit->triangle][0]])), 1.0F, 1e-4F);
        ASSERT_GT(glm::dot(hit->geometric, mesh.normals[mesh.triangles[hit->triangle][0]]), 0.0F);
        ASSERT_EQ(tree.zone_of(hit->triangle), mesh.zones[hit->triangle]);
    }
    EXPECT_GT(met, 3000);
    EXPECT_LE(odd, 2);
}

// A ball of latitude and longitude triangles, corners counter-clockwise from outside, open at the bottom.
SitterMesh ball(float radius) {
    constexpr int kRows = 24;
    constexpr int kColumns = 48;
    SitterMesh mesh;
    for (int i = 0; i <= kRows; ++i) {
        for (int j = 0; j < kColumns; ++j) {
            const float polar = 0.9F * kPi * static_cast<float>(i) / kRows;
            const float turn = 2.0F * kPi * static_cast<float>(j) / kColumns;
            const Vec3 n(std::sin(polar) * std::sin(turn), std::cos(polar), std::sin(polar) * std::cos(turn));
            mesh.positions.push_back(radius * n);
            mesh.normals.push_back(n);
        }
    }
    const auto at = [](int i, int j) { return static_cast<std::uint32_t>(i * kColumns + j % kColumns); };
    for (int i = 0; i < kRows; ++i) {
        for (int j = 0; j < kColumns; ++j) {
            mesh.triangles.push_back({at(i, j), at(i + 1, j), at(i + 1, j + 1)});
            mesh.triangles.push_back({at(i, j), at(i + 1, j + 1), at(i, j + 1)});
        }
    }
    mesh.zones.assign(mesh.triangles.size(), Zone::kFace);
    return mesh;
}

TEST(MeshTree, KnowsWhatIsInside) {
    const MeshTree tree(ball(0.1F));
    EXPECT_TRUE(tree.encloses(Vec3(0.0F)));
    EXPECT_TRUE(tree.encloses(Vec3(0.05F, 0.02F, -0.04F)));
    EXPECT_FALSE(tree.encloses(Vec3(0.0F, 0.11F, 0.0F)));
    EXPECT_FALSE(tree.encloses(Vec3(0.0F, 0.0F, 0.3F)));
    EXPECT_FALSE(tree.encloses(Vec3(0.0F, -0.2F, 0.0F)));
}

// On a smooth convex surface the place that rays leave from lies on or above the flat triangle, and its normal is the
// sphere's to the facets' fineness.
TEST(MeshTree, SmoothsTheBall) {
    const MeshTree tree(ball(0.1F));
    RandomStream random(8);
    for (int i = 0; i < 2000; ++i) {
        const Vec3 out = random.next_direction();
        const auto hit = tree.intersect({out, -out});
        if (out.y < -0.9F) continue;  // through the opening
        ASSERT_TRUE(hit);
        EXPECT_GT(glm::dot(hit->shading, out), 0.999F);
        EXPECT_GE(glm::dot(hit->lifted - hit->position, hit->geometric), -1e-6F);
        EXPECT_NEAR(glm::length(hit->lifted), 0.1F, 0.0008F);
    }
}

}  // namespace
}  // namespace understudy
