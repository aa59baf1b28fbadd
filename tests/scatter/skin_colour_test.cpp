#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "scatter/skin.h"
#include "spectrum/colour.h"
#include "spectrum/illuminant.h"

namespace understudy {
namespace {

constexpr double kBlood = 0.02;

Xyz colour_in_daylight(const Spectrum& reflectance) {
    static const Spectrum daylight = normalised_to_luminance(*cie_illuminant("D65"));
    return xyz_of(daylight * reflectance);
}

Lab skin_lab(double melanin, double blood) {
    return lab_of(colour_in_daylight(skin_albedo(melanin, blood)), colour_in_daylight(Spectrum(1.0F)));
}

double typology_angle(const Lab& lab) { return std::atan((lab.lightness - 50.0) / lab.b) * 180.0 / std::numbers::pi; }

double farthest_channel(const Double3& one, const Double3& other) {
    const Double3 apart = glm::abs(one - other);
    return std::max({apart.x, apart.y, apart.z});
}

double distance_to_family(const Double3& measured) {
    double best = 1.0;
    for (double melanin = 0.004; melanin < 0.43; melanin *= 1.2)
        for (double blood = 0.003; blood < 0.1; blood *= 1.3)
            best = std::min(
                best, farthest_channel(linear_srgb_of(colour_in_daylight(skin_albedo(melanin, blood))), measured));
    return best;
}

// Jensen and others, SIGGRAPH 2001, the table of measured media: the diffuse reflectance of two people's skin in the
// three channels of a video camera, here taken as those of ITU-R BT.709.
TEST(SkinColour, ReachesTheMeasuredSkins) {
    EXPECT_LT(distance_to_family({0.44, 0.22, 0.13}), 0.05);
    EXPECT_LT(distance_to_family({0.63, 0.44, 0.34}), 0.05);
    // What no skin is: a green and a grey.
    EXPECT_GT(distance_to_family({0.22, 0.44, 0.13}), 0.1);
    EXPECT_GT(distance_to_family({0.63, 0.63, 0.63}), 0.1);
}

// The individual typology angle, with the classes of A. Chardon and others, "Skin Colour Typology and Suntanning
// Pathways", 1991: light above 28°, tan and brown from there to −30°, dark below (from memory). The shares of melanin
// are those that Jacques 1998 names light, moderate and dark.
TEST(SkinColour, FallsInItsClass) {
    for (const double melanin : {0.013, 0.02}) EXPECT_GT(typology_angle(skin_lab(melanin, kBlood)), 28.0) << melanin;
    for (const double melanin : {0.11, 0.13}) {
        EXPECT_LT(typology_angle(skin_lab(melanin, kBlood)), 28.0) << melanin;
        EXPECT_GT(typology_angle(skin_lab(melanin, kBlood)), -30.0) << melanin;
    }
    for (const double melanin : {0.18, 0.35, 0.43}) EXPECT_LT(typology_angle(skin_lab(melanin, kBlood)), -30.0);
}

// All six classes of S. Del Bino and F. Bernerd, "Variations in Skin Colour and the Biological Consequences of
// Ultraviolet Radiation Exposure", Br. J. Dermatol. 169, 2013 (very light over 55°, light over 41°, intermediate over
// 28°, tan over 10°, brown over −30°, dark; from memory) can be had by melanin alone, in their order.
TEST(SkinColour, ReachesEveryClass) {
    constexpr std::array<double, 7> kLimits = {90.0, 55.0, 41.0, 28.0, 10.0, -30.0, -90.0};
    std::array<int, 6> found{};
    double last = 90.0;
    for (double melanin = 0.002; melanin < 0.45; melanin *= 1.1) {
        const double angle = typology_angle(skin_lab(melanin, 0.01));
        EXPECT_LT(angle, last) << melanin;
        last = angle;
        for (std::size_t i = 0; i < found.size(); ++i)
            found[i] += angle <= kLimits[i] && angle > kLimits[i + 1] ? 1 : 0;
    }
    for (std::size_t i = 0; i < found.size(); ++i) EXPECT_GT(found[i], 0) << i;
}

// Dark skin keeps some green and blue; what a spectrophotometer finds with the surface's 4 % or so taken off: common
// practice, no source.
TEST(SkinColour, StaysBrownWhereDark) {
    const Spectrum dark = skin_albedo(0.25, kBlood);
    EXPECT_GT(dark.at(550.0F), 0.05F);
    EXPECT_LT(dark.at(550.0F), 0.12F);
    EXPECT_GT(dark.at(450.0F), 0.03F);
    EXPECT_LT(dark.at(450.0F), 0.08F);
}

// Skin's chroma under daylight lies between about 10 and 25 whatever its lightness, its hue between red and yellow:
// from memory of published CIELAB surveys, no one source.
TEST(SkinColour, IsNeitherGreyNorOrange) {
    for (const double melanin : {0.013, 0.03, 0.06, 0.13, 0.25, 0.4}) {
        const Lab lab = skin_lab(melanin, kBlood);
        EXPECT_GT(std::hypot(lab.a, lab.b), 10.0) << melanin;
        EXPECT_LT(std::hypot(lab.a, lab.b), 25.0) << melanin;
        EXPECT_GT(lab.a, 0.0);
        EXPECT_GT(lab.b, 0.0);
    }
}

TEST(SkinColour, ReddensWithBlood) {
    for (const double melanin : {0.02, 0.06, 0.13}) EXPECT_GT(skin_lab(melanin, 0.05).a, skin_lab(melanin, 0.01).a);
}

}  // namespace
}  // namespace understudy
