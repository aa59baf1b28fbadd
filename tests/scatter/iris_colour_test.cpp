// The colours of eyes.
#include "scatter/iris_colour.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "scatter/eye_colours.h"
#include "spectrum/colour.h"
#include "spectrum/illuminant.h"

namespace understudy {
namespace {

Lab lab_in_daylight(const Spectrum& reflectance) {
    const Spectrum daylight = normalised_to_luminance(*cie_illuminant("D65"));
    return lab_of(xyz_of(daylight * reflectance), xyz_of(daylight));
}

Lab rim_of(IrisColour colour) {
    const IrisPigment pigment = iris_pigment(colour);
    return lab_in_daylight(iris_albedo(pigment, pigment.at_rim));
}

double hue_deg(const Lab& lab) { return std::atan2(lab.b, lab.a) * 180.0 / std::acos(-1.0); }

TEST(IrisColour, IsPossibleInsideTheEye) {
    const Spectrum sclera = sclera_albedo();
    for (std::size_t c = 0; c < kIrisNames.size(); ++c) {
        const IrisPigment pigment = iris_pigment(static_cast<IrisColour>(c));
        for (const double melanin : {0.0002, 0.01, 0.4}) {
            const Spectrum iris = iris_albedo(pigment, melanin);
            for (std::size_t k = 0; k < Spectrum::kCount; ++k) {
                EXPECT_GT(iris[k], 0.0F);
                EXPECT_LT(iris[k], sclera[k]);
                EXPECT_LT(sclera[k], 1.0F);
            }
        }
    }
}

// More melanin from blue by grey, green and hazel to brown (Imesch, Wallow and Albert 1997), and as dark.
TEST(IrisColour, MelaninGrowsFromBlueToBrown) {
    const auto melanin = [](IrisColour colour) { return iris_pigment(colour).at_rim; };
    EXPECT_GT(melanin(IrisColour::kDarkBrown), melanin(IrisColour::kBrown));
    EXPECT_GT(melanin(IrisColour::kBrown), melanin(IrisColour::kHazel));
    EXPECT_GT(melanin(IrisColour::kHazel), melanin(IrisColour::kGreen));
    EXPECT_GT(melanin(IrisColour::kGreen), melanin(IrisColour::kBlue));
    EXPECT_LT(rim_of(IrisColour::kDarkBrown).lightness, rim_of(IrisColour::kBrown).lightness - 5.0);
    EXPECT_LT(rim_of(IrisColour::kBrown).lightness, rim_of(IrisColour::kBlue).lightness - 5.0);
}

// Colour words as the CIELAB hue circle has them (blue about 270°, green 90° to 180°, orange and brown 40° to 80°).
TEST(IrisColour, LooksAsItIsCalled) {
    const Lab blue = rim_of(IrisColour::kBlue);
    EXPECT_LT(blue.b, -10.0);
    const Lab grey = rim_of(IrisColour::kGrey);
    EXPECT_LT(std::hypot(grey.a, grey.b), 0.7 * std::hypot(blue.a, blue.b));
    const Lab green = rim_of(IrisColour::kGreen);
    EXPECT_GT(hue_deg(green), 90.0);
    EXPECT_LT(hue_deg(green), 180.0);
    EXPECT_GT(std::hypot(green.a, green.b), 10.0);  // or it would be called grey
    const Lab brown = rim_of(IrisColour::kBrown);
    EXPECT_GT(hue_deg(brown), 40.0);
    EXPECT_LT(hue_deg(brown), 90.0);
    const Lab hazel = rim_of(IrisColour::kHazel);
    EXPECT_GT(hue_deg(hazel), hue_deg(brown));
    EXPECT_LT(hue_deg(hazel), hue_deg(green));
}

TEST(IrisColour, NamesGoRound) {
    for (std::size_t c = 0; c < kIrisNames.size(); ++c) {
        EXPECT_EQ(iris_colour_named(kIrisNames.at(c)), static_cast<IrisColour>(c));
    }
    EXPECT_FALSE(iris_colour_named("Blue"));
    EXPECT_FALSE(iris_colour_named(""));
}

}  // namespace
}  // namespace understudy
