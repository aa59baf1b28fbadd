// What is drawn on iris and sclera.
#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "stage/iris_pattern.h"
#include "stage/sclera_pattern.h"

namespace understudy {
namespace {

constexpr float kPupil = 0.0016F;
const Waves kWaves{{450.0F, 550.0F, 600.0F, 650.0F}, {}};

Vec2 on_ring(float radius, float turn) { return radius * Vec2(std::cos(turn), std::sin(turn)); }

// The ring closes: no seam where the angle jumps.
TEST(IrisPattern, HasNoSeam) {
    const IrisPattern pattern(IrisColour::kHazel);
    for (float radius = 0.0018F; radius < 0.0058F; radius += 0.0002F) {
        const auto above = pattern.patch(on_ring(radius, kPi - 1e-4F), kPupil, 0);
        const auto below = pattern.patch(on_ring(radius, -kPi + 1e-4F), kPupil, 0);
        EXPECT_NEAR(above.melanin, below.melanin, 0.02F * above.melanin) << radius;
        EXPECT_NEAR(above.share, below.share, 0.02F) << radius;
    }
}

// A living surface: slopes that shade and do not tear, dark at the pupil's seam and in the limbus, never brighter than
// what it is made of.
TEST(IrisPattern, IsReliefWithDarkEdges) {
    const IrisPattern pattern(IrisColour::kBlue);
    double squares = 0.0;
    double middle = 0.0;
    int count = 0;
    for (int i = 0; i < 4000; ++i) {
        const float turn = 2.399963F * static_cast<float>(i);
        const float radius = kPupil + (0.0059F - kPupil) * (static_cast<float>(i) + 0.5F) / 4000.0F;
        const auto patch = pattern.patch(on_ring(radius, turn), kPupil, 0);
        const float slope = glm::length(patch.slope);
        ASSERT_TRUE(std::isfinite(slope));
        EXPECT_LT(slope, 3.0F);
        EXPECT_GT(patch.melanin, 0.0F);
        EXPECT_GE(patch.share, 0.0F);
        // No place sends back more than it gets.
        const Light4 colour = pattern.colour(patch, sample_waves(0.4F));
        EXPECT_LE(std::max({colour.x, colour.y, colour.z, colour.w}), 1.0F);
        squares += static_cast<double>(slope * slope);
        middle += static_cast<double>(patch.share);
        ++count;
    }
    EXPECT_GT(std::sqrt(squares / count), 0.1);
    EXPECT_LT(std::sqrt(squares / count), 0.8);
    middle /= count;
    double seam = 0.0;
    double rim = 0.0;
    for (int i = 0; i < 200; ++i) {
        const float turn = 0.0314159F * static_cast<float>(i);
        seam += static_cast<double>(pattern.patch(on_ring(kPupil + 1e-6F, turn), kPupil, 0).share) / 200.0;
        rim += static_cast<double>(pattern.patch(on_ring(0.00589F, turn), kPupil, 0).share) / 200.0;
    }
    EXPECT_LT(seam, 0.4 * middle);
    EXPECT_LT(rim, 0.5 * middle);
}

// Whatever the pupil does, the pattern is stretched with it, not cut off.
TEST(IrisPattern, StretchesWithThePupil) {
    const IrisPattern pattern(IrisColour::kBrown);
    const auto narrow = pattern.patch(on_ring(0.0010F + 0.5F * 0.0049F, 1.0F), 0.0010F, 0);
    const auto wide = pattern.patch(on_ring(0.0030F + 0.5F * 0.0029F, 1.0F), 0.0030F, 0);
    EXPECT_NEAR(narrow.melanin, wide.melanin, 1e-4F * narrow.melanin);
    EXPECT_NE(pattern.patch(on_ring(0.004F, 1.0F), kPupil, 0).melanin,
              pattern.patch(on_ring(0.004F, 1.0F), kPupil, 100).melanin);
}

Vec3 way_at(float out_deg, float turn) {
    const float angle = out_deg * kPi / 180.0F;
    return {std::sin(angle) * std::cos(turn), std::sin(angle) * std::sin(turn), std::cos(angle)};
}

// Pinker, not only darker, toward the corners; blood takes green and leaves red.
TEST(ScleraPattern, IsPinkerTowardTheCorners) {
    const ScleraPattern sclera;
    double corner = 0.0;
    double over = 0.0;
    for (int i = 0; i < 200; ++i) {
        const float jitter = 0.002F * static_cast<float>(i - 100);
        const Light4 aside = sclera.colour(way_at(62.0F, jitter), 0, kWaves);
        const Light4 above = sclera.colour(way_at(50.0F, 0.5F * kPi + jitter), 0, kWaves);
        corner += static_cast<double>(aside.y / aside.w) / 200.0;
        over += static_cast<double>(above.y / above.w) / 200.0;
        EXPECT_LT(aside.w, 0.8F);
        EXPECT_GT(aside.y, 0.1F);
    }
    EXPECT_LT(corner, over - 0.05);
}

// No step from the white over the limbus onto the cornea, and none where the white ends there.
TEST(ScleraPattern, RunsSmoothlyIntoTheLimbus) {
    const ScleraPattern sclera;
    const float limbus_deg = std::asin(static_cast<float>(kIrisRadius / kEyeballRadius)) * 180.0F / kPi;
    const Light4 line = sclera.limbus_colour(kWaves);
    const Light4 beside = sclera.colour(way_at(limbus_deg + 0.01F, 1.0F), 0, kWaves);
    EXPECT_NEAR(line.y, beside.y, 0.005F);
    EXPECT_LT(line.y, 0.6F * sclera.colour(way_at(limbus_deg + 12.0F, 0.5F * kPi), 0, kWaves).y);
    EXPECT_NEAR(ScleraPattern::covers_cornea(0.0059F), 1.0F, 1e-6F);
    EXPECT_EQ(ScleraPattern::covers_cornea(0.0050F), 0.0F);
    float before = 0.0F;
    for (float off = 0.0050F; off < 0.0059F; off += 0.00005F) {
        const float share = ScleraPattern::covers_cornea(off);
        EXPECT_GE(share, before);
        EXPECT_LT(share - before, 0.2F);
        before = share;
    }
}

}  // namespace
}  // namespace understudy
