#include "spectrum/colour.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "spectrum/illuminant.h"

namespace understudy {
namespace {

// IEC 61966-2-1:1999 equation 8, printed to four decimals.
TEST(Srgb, HasTheStandardsMatrix) {
    const glm::dmat3 rows({3.2406, -1.5372, -0.4986}, {-0.9689, 1.8758, 0.0415}, {0.0557, -0.2040, 1.0570});
    for (int row = 0; row < 3; ++row) {
        // The printed matrix was inverted from a rounded one, hence the 4e-4.
        for (int column = 0; column < 3; ++column) {
            EXPECT_NEAR(linear_srgb_of_xyz_matrix()[column][row], rows[row][column], 4e-4);
        }
    }
}

// ITU-R BT.709-6: E'Y = 0.2126 R + 0.7152 G + 0.0722 B.
TEST(Srgb, HasBt709sLuminance) {
    EXPECT_NEAR(xyz_of_linear_srgb({1.0, 0.0, 0.0}).y, 0.2126, 5e-5);
    EXPECT_NEAR(xyz_of_linear_srgb({0.0, 1.0, 0.0}).y, 0.7152, 5e-5);
    EXPECT_NEAR(xyz_of_linear_srgb({0.0, 0.0, 1.0}).y, 0.0722, 5e-5);
}

TEST(Srgb, IsWhiteAtD65AndComesBack) {
    const Double3 white = linear_srgb_of(kD65White);
    for (int i = 0; i < 3; ++i) EXPECT_NEAR(white[i], 1.0, 1e-12);
    const Xyz back = xyz_of_linear_srgb(linear_srgb_of({0.2, 0.3, 0.1}));
    EXPECT_NEAR(back.x, 0.2, 1e-12);
    EXPECT_NEAR(back.y, 0.3, 1e-12);
    EXPECT_NEAR(back.z, 0.1, 1e-12);
}

// IEC 61966-2-1 transfer; 0.18 by colour-science's published test vector, the codes by the formula worked by hand.
TEST(Srgb, EncodesKnownTones) {
    EXPECT_NEAR(encode_srgb(0.18), 0.461356129500442, 1e-12);
    EXPECT_EQ(srgb_code(0.18), 118);
    EXPECT_EQ(srgb_code(0.10), 89);
    EXPECT_EQ(srgb_code(0.12), 97);
    EXPECT_EQ(srgb_code(0.125), 99);
    EXPECT_EQ(srgb_code(0.157), 110);
    EXPECT_EQ(srgb_code(0.5), 188);
    EXPECT_EQ(srgb_code(1.0), 255);
    EXPECT_NEAR(decode_srgb(117.0 / 255.0), 0.17788842, 1e-8);
    EXPECT_NEAR(decode_srgb(118.0 / 255.0), 0.18116424, 1e-8);
    EXPECT_NEAR(decode_srgb(119.0 / 255.0), 0.18447499, 1e-8);
    EXPECT_NEAR(decode_srgb(128.0 / 255.0), 0.21586050, 1e-8);
}

TEST(Srgb, ClipsOnlyTheCode) {
    EXPECT_EQ(srgb_code(-0.2), 0);
    EXPECT_EQ(srgb_code(7.0), 255);
    EXPECT_EQ(srgb_code(std::numeric_limits<double>::infinity()), 255);
    EXPECT_LT(encode_srgb(-0.2), 0.0);
    EXPECT_GT(encode_srgb(7.0), 2.0);
}

TEST(Srgb, DecodesEveryCodeToItself) {
    for (int code = 0; code < 256; ++code) EXPECT_EQ(srgb_code(decode_srgb(code / 255.0)), code);
}

// The published Bradford matrix from D50 to D65 (B. Lindbloom, "Chromatic adaptation"; ASTM E308 whites).
TEST(Adaptation, HasThePublishedMatrixFromD50) {
    const glm::dmat3 rows({0.9555766, -0.0230393, 0.0631636}, {-0.0282895, 1.0099416, 0.0210077},
                          {0.0122982, -0.0204830, 1.3299098});
    const glm::dmat3 matrix = adaptation_to_d65({0.96422, 1.0, 0.82521});
    for (int row = 0; row < 3; ++row) {
        // His D65 is 0.95047, 1, 1.08883; sRGB's is x = 0.3127, y = 0.3290, which differs by 0.0002 in Z.
        for (int column = 0; column < 3; ++column) EXPECT_NEAR(matrix[column][row], rows[row][column], 4e-4);
    }
}

TEST(Adaptation, MakesTheWhiteNeutral) {
    for (const char* name : {"A", "D55", "FL11"}) {
        const Xyz white = xyz_of(*cie_illuminant(name));
        const Double3 rgb =
            linear_srgb_of_xyz_matrix() * adaptation_to_d65(white) * (Double3(white.x, white.y, white.z) / white.y);
        for (int i = 0; i < 3; ++i) EXPECT_NEAR(rgb[i], 1.0, 1e-9) << name;
    }
}

// CIELAB lightness of 18.4187 % is 50 by definition of the formula (116·cbrt(0.184187) − 16); a grey has no a and b.
TEST(Lab, OfGreysIsKnown) {
    const Lab middle = lab_of({0.184187 * kD65White.x, 0.184187, 0.184187 * kD65White.z}, kD65White);
    EXPECT_NEAR(middle.lightness, 50.0, 1e-4);
    EXPECT_NEAR(middle.a, 0.0, 1e-9);
    EXPECT_NEAR(middle.b, 0.0, 1e-9);
    EXPECT_NEAR(lab_of(kD65White, kD65White).lightness, 100.0, 1e-12);
    // The straight part: L* = 903.3·Y/Yn below 0.008856, CIE 15:2004 note to equation 8.3.
    EXPECT_NEAR(lab_of({0.0, 0.001, 0.0}, kD65White).lightness, 0.9033, 1e-4);
}

// sRGB red's L*a*b*: 53.24, 80.09, 67.20 (B. Lindbloom's colour calculator, D65).
TEST(Lab, OfRedIsKnown) {
    const Lab red = lab_of(xyz_of_linear_srgb({1.0, 0.0, 0.0}), kD65White);
    EXPECT_NEAR(red.lightness, 53.24, 0.01);
    EXPECT_NEAR(red.a, 80.09, 0.02);
    EXPECT_NEAR(red.b, 67.20, 0.02);
    EXPECT_NEAR(colour_difference({50.0, 3.0, 4.0}, {50.0, 0.0, 0.0}), 5.0, 1e-12);
}

// McCamy 1992 by colour-science's published test vectors; the last one's x and y are given to eight decimals, which is
// 0.002 K.
TEST(ColourTemperature, FollowsMcCamy) {
    EXPECT_NEAR(correlated_colour_temperature({0.31270, 0.32900}), 6505.08059131, 1e-6);
    EXPECT_NEAR(correlated_colour_temperature({0.44757, 0.40745}), 2857.28961266, 1e-6);
    EXPECT_NEAR(correlated_colour_temperature({0.25252094, 0.25222088}), 19501.6195, 2e-3);
}

// CIE 15:2018's correlated colour temperatures, which McCamy's cubic meets within 15 K.
TEST(ColourTemperature, OfTheCiesIlluminants) {
    const auto check = [](const char* name, double kelvin) {
        const Chromaticity colour = chromaticity_of(xyz_of(*cie_illuminant(name)));
        EXPECT_NEAR(correlated_colour_temperature(colour), kelvin, 15.0) << name;
    };
    check("A", 2856.0);
    check("D50", 5003.0);
    check("D55", 5503.0);
    check("D65", 6504.0);
    check("FL2", 4230.0);
    check("FL11", 4000.0);
    check("LED-B1", 2733.0);
    check("LED-B3", 4103.0);
    check("LED-B5", 6598.0);
}

}  // namespace
}  // namespace understudy
