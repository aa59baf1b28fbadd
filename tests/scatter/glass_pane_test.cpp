#include "scatter/glass_pane.h"

#include <gtest/gtest.h>

#include "base/geometry.h"

namespace understudy {
namespace {

float cosine_of(double angle_deg) { return static_cast<float>(std::cos(radians(angle_deg))); }

// A face of index 1.5 reflects 4 %, and a plate of two passes 92.3 % (Hecht, Optics, 4.6 and its problem on a stack of
// slides: T = (1 − R) / (1 + R)).
TEST(GlassPane, MirrorsEightPerCentWhenItIsBare) {
    EXPECT_NEAR(plain_pane_reflectance(1.0F, 1.5F), 2.0F * 0.04F / 1.04F, 1e-6F);
    // CR-39, the plastic of most lenses, n = 1.498: makers' tables give 92 % of transmission.
    EXPECT_NEAR(1.0F - plain_pane_reflectance(1.0F, 1.498F), 0.92F, 0.005F);
}

// Stokes 1862 for each polarisation at Brewster's angle, arctan 1.5 = 56.31°: the one reflects nothing, the other
// ((n² − 1) / (n² + 1))² = 0.14793 a face.
TEST(GlassPane, MirrorsOnePolarisationAtBrewstersAngle) {
    const float perpendicular = (1.25F / 3.25F) * (1.25F / 3.25F);
    EXPECT_NEAR(plain_pane_reflectance(cosine_of(degrees(std::atan(1.5))), 1.5F),
                perpendicular / (1.0F + perpendicular), 1e-5F);
}

TEST(GlassPane, MirrorsEverythingAtGrazingIncidence) {
    EXPECT_NEAR(plain_pane_reflectance(0.0F, 1.5F), 1.0F, 1e-6F);
    EXPECT_NEAR(coated_pane_reflectance(0.0F, 1.5F, kCoatedFace), 1.0F, 1e-6F);
}

// Both faces of a coated lens: about 0.5 … 1 % (makers' sheets; common practice, no source), always less than bare.
TEST(GlassPane, MirrorsLittleWhenItIsCoated) {
    EXPECT_NEAR(coated_pane_reflectance(1.0F, 1.5F, kCoatedFace), 0.008F, 0.0005F);
    for (double angle = 0.0; angle < 89.0; angle += 1.0) {
        EXPECT_LT(coated_pane_reflectance(cosine_of(angle), 1.5F, kCoatedFace),
                  plain_pane_reflectance(cosine_of(angle), 1.5F))
            << angle;
    }
}

}  // namespace
}  // namespace understudy
