// The grid of hairs against every piece one by one, and what a hit tells of the hair.
#include "stage/strand_grid.h"

#include <gtest/gtest.h>

#include "scatter/random_stream.h"
#include "stage/stage.h"
#include "support/studio_from.h"

namespace understudy {
namespace {

constexpr float kRadius = 0.002F;

Strands straight_hairs(int count) {
    RandomStream random(3);
    Strands strands;
    strands.shades = {HairPigment{}};
    for (int i = 0; i < count; ++i) {
        strands.strands.push_back({static_cast<std::uint32_t>(strands.points.size()), 2, 0, StrandKind::kHair});
        const Vec3 middle = random.next3();
        const Vec3 half = 0.15F * (random.next3() - 0.5F);
        strands.points.push_back({middle - half, kRadius});
        strands.points.push_back({middle + half, kRadius});
    }
    return strands;
}

struct Nearest {
    double distance = 1e9;
    double clearance = 0.0;  // of the ray inside or outside of the edge, in radii, the smallest of all pieces
    std::size_t piece = 0;
    bool met = false;
};

// A ribbon that faces the ray is met where the ray passes its axis within a radius: the nearest approach of two lines
// in closed form.
Nearest try_every_piece(const Strands& strands, const Ray& ray) {
    Nearest nearest;
    nearest.clearance = 1e9;
    const Double3 way(ray.direction);
    for (std::size_t i = 0; i < strands.strands.size(); ++i) {
        const Double3 a(strands.points[2 * i].place);
        const Double3 axis = Double3(strands.points[2 * i + 1].place) - a;
        const Double3 from = Double3(ray.origin) - a;
        const double aa = glm::dot(axis, axis);
        const double aw = glm::dot(axis, way);
        const double det = aa - aw * aw;
        const double along = (glm::dot(axis, from) - aw * glm::dot(way, from)) / det;
        const double distance = (aw * glm::dot(axis, from) - aa * glm::dot(way, from)) / det;
        const double apart = glm::distance(a + along * axis, Double3(ray.origin) + distance * way) / 0.002;
        if (distance < 0.0 || along < -1.0 || along > 2.0) continue;
        // Ribbons end in half a disc as the ray sees them, which a slanting ray meets farther on along the axis.
        const double from_end = std::min(std::abs(along), std::abs(along - 1.0)) * std::sqrt(det) / 0.002;
        nearest.clearance = std::min({nearest.clearance, std::abs(apart - 1.0), apart < 1.1 ? from_end - 0.9 : 1.0});
        if (apart > 1.0 || along < 0.0 || along > 1.0 || distance > nearest.distance) continue;
        nearest.distance = distance;
        nearest.piece = i;
        nearest.met = true;
    }
    return nearest;
}

TEST(StrandGrid, MeetsWhatEveryPieceTriedAloneDoes) {
    const Strands strands = straight_hairs(2000);
    const StrandGrid tree(strands);
    RandomStream random(9);
    int met = 0;
    for (int i = 0; i < 2000; ++i) {
        const Vec3 origin = 3.0F * (random.next3() - 0.5F) + 0.5F;
        const Ray ray{origin, glm::normalize(random.next3() - origin)};
        const Nearest expected = try_every_piece(strands, ray);
        if (expected.clearance < 0.1) continue;  // at an edge either answer is right
        const StrandMeeting meeting = tree.meet(ray);
        ASSERT_EQ(meeting.distance < kInfinity, expected.met) << i;
        EXPECT_EQ(tree.blocks(ray), expected.met) << i;
        if (!expected.met) continue;
        ++met;
        EXPECT_NEAR(static_cast<double>(meeting.distance), expected.distance, 0.003) << i;
        EXPECT_EQ(meeting.piece, 2 * expected.piece) << i;
    }
    EXPECT_GT(met, 300);
}

// One upright hair, seen from the front: where the ray passes left of the axis or right of it.
TEST(StrandGrid, TellsWhereAcrossTheHairIsMet) {
    Strands strands;
    strands.shades = {HairPigment{}};
    strands.points = {{{0.0F, 0.0F, 0.0F}, kRadius}, {{0.0F, 1.0F, 0.0F}, kRadius}};
    strands.strands = {{0, 2, 0, StrandKind::kLash}};
    const StrandGrid tree(strands);
    for (const float aside : {-0.9F, -0.4F, 0.0F, 0.6F}) {
        const Ray ray{{aside * kRadius, 0.5F, 1.0F}, {0.0F, 0.0F, -1.0F}};
        const StrandPlace place = tree.place_of(tree.meet(ray), ray);
        // wo is +z and the tangent +y, so that cross(wo, tangent) is −x.
        EXPECT_NEAR(place.across, -aside, 0.02F);
        EXPECT_NEAR(place.axis.y, 0.5F, 1e-4F);
        EXPECT_EQ(place.kind, StrandKind::kLash);
        // Rays that go on, whichever way, do not meet the hair that they leave.
        for (const Vec3& way :
             {Vec3(0, 0, 1), Vec3(0, 0, -1), Vec3(1, 0, 0), Vec3(0.6F, 0.8F, 0), Vec3(0, 0.96F, 0.28F)}) {
            EXPECT_FALSE(tree.blocks({place.leave(way), way}));
        }
    }
}

TEST(Stage, NamesTheHairThatHidesALight) {
    Studio studio = studio_from(
        "[sitter]\nhead = \"none\"\n[backdrop]\nsurface = \"none\"\n[[light]]\nmodifier = { shape = \"sphere\", "
        "diameter = 0.2 }\nmeter = 4.0\n");
    studio.sitter.strands.shades = {HairPigment{}};
    studio.sitter.strands.points = {{{0.0F, 0.0F, 0.5F}, kRadius}, {{0.0F, 2.0F, 0.5F}, kRadius}};
    for (const auto& [kind, name] : {std::pair(StrandKind::kHair, "hair"), std::pair(StrandKind::kLash, "lashes"),
                                     std::pair(StrandKind::kBrow, "brow"), std::pair(StrandKind::kBeard, "beard")}) {
        studio.sitter.strands.strands = {{0, 2, 0, kind}};
        const Stage stage(studio, Stage::With::kSitter);
        const Ray ray{{0.0F, 1.0F, 0.0F}, {0.0F, 0.0F, 1.0F}};
        EXPECT_EQ(stage.blocker(ray).value_or(""), name);
        EXPECT_TRUE(stage.blocks(ray));
        EXPECT_FALSE(Stage(studio, Stage::With::kNobody).blocker(ray));
    }
}

}  // namespace
}  // namespace understudy
