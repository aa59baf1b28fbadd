// A reflectance made for a colour has that colour, and is one that a paper could have.
#include "spectrum/smooth_reflectance.h"

#include <gtest/gtest.h>

namespace understudy {
namespace {

// Back through the CIE's observer and D65, which the making does not invert but fit. Steps of the sRGB cube, from 0.05
// to 0.9 of linear light.
TEST(SmoothReflectance, HasTheColourItWasMadeFor) {
    int made = 0;
    for (const double r : {0.05, 0.2, 0.5, 0.9}) {
        for (const double g : {0.05, 0.2, 0.5, 0.9}) {
            for (const double b : {0.05, 0.2, 0.5, 0.9}) {
                const Lab wanted = lab_of(xyz_of_linear_srgb({r, g, b}), kD65White);
                const auto reflectance = smooth_reflectance(wanted);
                ASSERT_TRUE(reflectance) << r << ' ' << g << ' ' << b;
                ++made;
                EXPECT_LT(colour_difference(daylight_colour(*reflectance), wanted), 0.02);
                for (std::size_t i = 0; i < Spectrum::kCount; ++i) {
                    ASSERT_GE((*reflectance)[i], 0.0F);
                    ASSERT_LE((*reflectance)[i], 1.0F);
                }
            }
        }
    }
    EXPECT_EQ(made, 64);
}

// A grey's reflectance is flat: 18 % is L* 49.496 (ISO 11664-4: 116 · 0.18^(1/3) − 16).
TEST(SmoothReflectance, OfAGreyIsFlat) {
    const auto grey = smooth_reflectance({116.0 * std::cbrt(0.18) - 16.0, 0.0, 0.0});
    ASSERT_TRUE(grey);
    for (std::size_t i = 0; i < Spectrum::kCount; ++i) EXPECT_NEAR((*grey)[i], 0.18F, 1e-4F);
}

// Not even a strong colour swings from black to white within 50 nm, a tenth each 5 nm: nothing spiky that a lamp's
// lines would show up.
TEST(SmoothReflectance, IsSmooth) {
    for (const Double3& srgb : {Double3(0.6, 0.05, 0.05), Double3(0.05, 0.5, 0.05), Double3(0.05, 0.05, 0.6)}) {
        const auto reflectance = smooth_reflectance(lab_of(xyz_of_linear_srgb(srgb), kD65White));
        ASSERT_TRUE(reflectance);
        for (std::size_t i = 1; i < Spectrum::kCount; ++i) {
            EXPECT_LT(std::abs((*reflectance)[i] - (*reflectance)[i - 1]), 0.1F) << Spectrum::wave(i);
        }
    }
}

TEST(SmoothReflectance, ThereIsNoneForWhatNoSurfaceShows) {
    EXPECT_FALSE(smooth_reflectance({100.0, 0.0, 0.0}));
    EXPECT_FALSE(smooth_reflectance({0.0, 0.0, 0.0}));
    EXPECT_FALSE(smooth_reflectance({50.0, 200.0, 0.0}));
    EXPECT_FALSE(smooth_reflectance({98.0, 0.0, 90.0 * 1.5}));
}

}  // namespace
}  // namespace understudy
