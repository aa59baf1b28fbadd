#include <algorithm>
#include <cmath>
#include <set>

#include "sitter/head_for_test.h"

namespace understudy {
namespace {

// Mean and standard deviation, millimetres: ANSUR II (US Army, 2012), computed from its public tables.
struct Measured {
    double mean, deviation;
};
struct Sizes {
    Measured eye_spacing, head_breadth, head_length;
};
constexpr Sizes kWomen = {{61.71, 3.62}, {147.8, 5.2}, {189.8, 7.4}};
constexpr Sizes kMen = {{64.02, 3.42}, {154.3, 5.5}, {199.5, 7.0}};

class LibraryHeadTest : public testing::TestWithParam<const char*> {};

const Sizes& sizes_of(const std::string& name) {
    static const std::set<std::string> kAreWomen = {"aspen", "cedar", "hazel", "juniper", "linden", "maple"};
    return kAreWomen.contains(name) ? kWomen : kMen;
}

void expect_within_two_deviations(double metres, const Measured& measured, const char* what) {
    EXPECT_NEAR(1000.0 * metres, measured.mean, 2.0 * measured.deviation) << what;
}

TEST_P(LibraryHeadTest, HasAPersonsSizes) {
    const Sitter& sitter = posed(GetParam());
    ASSERT_TRUE(sitter.eyes);
    const auto& sizes = sizes_of(GetParam());
    const auto& eyes = *sitter.eyes;
    expect_within_two_deviations(glm::distance(eyes[0].centre, eyes[1].centre), sizes.eye_spacing, "eye spacing");
    double left = 0.0;
    double right = 0.0;
    double front = -1.0;
    double back = 1.0;
    for (const Vec3& p : sitter.mesh.positions) {
        const Double3 q = Double3(p) - 0.5 * (eyes[0].centre + eyes[1].centre);
        // Breadth over the ears; length from the glabella, between the brows, to the back of the head.
        if (q.y > 0.025) left = std::min(left, q.x), right = std::max(right, q.x);
        if (std::abs(q.x) < 0.006 && q.y > 0.012 && q.y < 0.04) front = std::max(front, q.z);
        if (std::abs(q.x) < 0.02 && q.y > -0.02) back = std::min(back, q.z);
    }
    expect_within_two_deviations(right - left, sizes.head_breadth, "head breadth");
    expect_within_two_deviations(front - back, sizes.head_length, "head length");
}

TEST_P(LibraryHeadTest, IsFineEnoughForAPortraitAndNotFiner) {
    const auto count = posed(GetParam()).mesh.triangles.size();
    EXPECT_GE(count, 150'000U);
    EXPECT_LE(count, 250'000U);
}

// All but what is not worn unless it is said: jacket, hat and glasses.
TEST_P(LibraryHeadTest, EveryTriangleHasAZoneAndEveryZoneATriangle) {
    const Sitter& sitter = posed(GetParam());
    ASSERT_EQ(sitter.mesh.zones.size(), sitter.mesh.triangles.size());
    const std::set<Zone> zones(sitter.mesh.zones.begin(), sitter.mesh.zones.end());
    EXPECT_EQ(zones.size(), static_cast<std::size_t>(Zone::kCount) - 3);
    for (const Zone zone : {Zone::kJacket, Zone::kHat, Zone::kGlasses}) EXPECT_FALSE(zones.contains(zone));
    for (const Zone zone : zones) EXPECT_FALSE(zone_name(zone).empty());
}

TEST_P(LibraryHeadTest, NormalsAreUnitAndAgreeWithTheFaces) {
    const Sitter& sitter = posed(GetParam());
    std::size_t against = 0;
    for (const auto& t : sitter.mesh.triangles) {
        const auto& p = sitter.mesh.positions;
        const Vec3 n = glm::cross(p[t[1]] - p[t[0]], p[t[2]] - p[t[0]]);
        for (const auto v : t) {
            ASSERT_NEAR(glm::length(sitter.mesh.normals[v]), 1.0F, 1e-4F);
            if (glm::dot(n, sitter.mesh.normals[v]) < 0.0F) ++against;
        }
    }
    // Only where skin is folded sharply (lid corners, lips) may a face turn from its corners' normals.
    EXPECT_LT(against, sitter.mesh.triangles.size() / 200);
}

TEST_P(LibraryHeadTest, LandmarksLieOnTheSkinAndFaceOutward) {
    const Sitter& sitter = posed(GetParam());
    ASSERT_TRUE(sitter.landmarks);
    const auto& l = *sitter.landmarks;
    for (const Landmark& landmark : {l.forehead, l.nose_bridge, l.nose_tip, l.cheek_camera_left, l.cheek_camera_right,
                                     l.chin, l.throat, l.crown}) {
        const auto hit = first_hit(sitter.mesh, landmark.position + 0.01 * landmark.normal, -landmark.normal);
        EXPECT_NEAR(hit.distance, 0.01, 1e-4);
        const auto outward = first_hit(sitter.mesh, landmark.position + 1e-3 * landmark.normal, landmark.normal);
        EXPECT_GT(outward.distance, 0.5) << "something stands before a meter's place";
    }
    EXPECT_LT(l.cheek_camera_left.position.x, 0.0);
    EXPECT_GT(l.cheek_camera_right.position.x, 0.0);
    EXPECT_GT(l.forehead.position.y, l.nose_bridge.position.y);
    EXPECT_GT(l.nose_bridge.position.y, l.nose_tip.position.y);
    EXPECT_GT(l.nose_tip.position.y, l.chin.position.y);
    EXPECT_GT(l.chin.position.y, l.throat.position.y);
    EXPECT_GT(l.nose_tip.position.z, l.nose_bridge.position.z);
    EXPECT_GT(l.crown.normal.y, 0.9);
}

// Volume fractions of epidermal melanosomes from about 1 % (very fair) to 25 % and more (very dark), and of dermal
// blood of 0.2 to 7 %: Jacques, "Optical properties of biological tissues: a review", Phys. Med. Biol. 58 (2013) R37.
TEST_P(LibraryHeadTest, SkinIsASkin) {
    const Sitter& sitter = posed(GetParam());
    EXPECT_GE(sitter.melanin, 0.01);
    EXPECT_LE(sitter.melanin, 0.25);
    EXPECT_GE(sitter.blood, 0.01);
    EXPECT_LE(sitter.blood, 0.04);
}

INSTANTIATE_TEST_SUITE_P(All, LibraryHeadTest, testing::ValuesIn(kLibraryHeads),
                         [](const auto& name) { return std::string(name.param); });

}  // namespace
}  // namespace understudy
