// How wide a front is, and how wide as its light has it.
#include <cmath>

#include <gtest/gtest.h>

#include "claims/lit_width.h"

namespace understudy {
namespace {

Emitter in_front(const ModifierShape& shape, double distance) {
    return {shape, {{0.0, 0.0, distance}, {0.0, 0.0, -1.0}, {-1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}}};
}

// An edge h behind which a surface lies throws an edge h D/d wide (similar triangles); practice's table of softness: a
// nose 20 mm off the cheek, the front on the axis.
TEST(LitWidth, IsPracticesTableOfSoftness) {
    struct Row {
        double size, distance, edge_mm;
    };
    for (const Row& row : {Row{0.18, 1.0, 3.6}, Row{0.42, 1.0, 8.4}, Row{0.60, 2.0, 6.0}, Row{0.60, 1.0, 12.0},
                           Row{0.60, 0.6, 20.0}, Row{1.20, 1.0, 24.0}}) {
        const LitWidth width = lit_width(in_front(DiscShape{row.size}, row.distance), Vec3(0.0F));
        EXPECT_NEAR(20.0 * width.whole, row.edge_mm, 0.02 * row.edge_mm) << row.size << " at " << row.distance;
    }
}

// Far away, so that no part of the front is farther than another: an even rectangle's light is spread evenly over its
// width, and four fifths of it lie in four fifths.
TEST(LitWidth, OfAnEvenRectangleIsFourFifths) {
    const LitWidth width = lit_width(in_front(RectangleShape{0.6, 0.9}, 12.0), Vec3(0.0F));
    EXPECT_NEAR(width.whole, 0.6 / 12.0, 1e-4 * width.whole);
    EXPECT_NEAR(width.four_fifths, 0.8 * 0.6 / 12.0, 0.02 * width.whole);
    EXPECT_NEAR(width.middle, 0.0, 0.01 * width.whole);
}

// Of a disc, chords: with x in radii, the share up to x is 1/2 + (x √(1 - x²) + asin x) / π, which is nine tenths at
// 0.687.
TEST(LitWidth, OfAnEvenDiscFollowsItsChords) {
    const LitWidth width = lit_width(in_front(DiscShape{0.6}, 12.0), Vec3(0.0F));
    const double x = 0.687;
    ASSERT_NEAR(0.5 + (x * std::sqrt(1.0 - x * x) + std::asin(x)) / M_PI, 0.9, 1e-3);
    EXPECT_NEAR(width.four_fifths, 0.687 * 0.6 / 12.0, 0.02 * width.whole);
}

// Lambertian, 1 lm over an area A: 1/(π A) sr⁻¹ m⁻² everywhere.
TEST(LitWidth, RadianceOfAnEvenFront) {
    const LitWidth width = lit_width(in_front(RectangleShape{0.6, 0.9}, 1.0), Vec3(0.0F));
    EXPECT_NEAR(width.radiance, 1.0 / (M_PI * 0.54), 1e-3 * width.radiance);
}

TEST(LitWidth, OfAFrontThatLooksAwayIsNoLight) {
    const Emitter away(DiscShape{0.6}, {{0.0, 0.0, 1.0}, {0.0, 0.0, 1.0}, {1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}});
    const LitWidth width = lit_width(away, Vec3(0.0F));
    EXPECT_EQ(width.four_fifths, 0.0);
    EXPECT_EQ(width.radiance, 0.0);
}

}  // namespace
}  // namespace understudy
