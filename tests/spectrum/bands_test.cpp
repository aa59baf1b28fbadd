// What the film loses by keeping sixteen bands in place of a full spectrum.
#include <gtest/gtest.h>

#include <cmath>

#include "skin_spectra.h"
#include "spectrum/colour.h"
#include "spectrum/illuminant.h"
#include "spectrum/observer.h"
#include "spectrum/waves.h"

namespace understudy {
namespace {

double banded(const Bands& reflectance, const Bands& response) {
    double sum = 0.0;
    for (std::size_t band = 0; band < kBandCount; ++band) {
        sum += static_cast<double>(reflectance[band]) * static_cast<double>(response[band]);
    }
    return sum;
}

Xyz xyz_through_bands(const Spectrum& reflectance, const Spectrum& light) {
    const Bands means = band_means(reflectance);
    return {banded(means, band_integrals(light * observer_x())), banded(means, band_integrals(light * observer_y())),
            banded(means, band_integrals(light * observer_z()))};
}

double loss(const Spectrum& reflectance, const Spectrum& light) {
    const Xyz white = xyz_of(light);
    return colour_difference(lab_of(xyz_of(reflectance * light), white),
                             lab_of(xyz_through_bands(reflectance, light), white));
}

// The bar is the program's own promise: 1 ΔE, about what two patches side by side can be told apart by.
TEST(Bands, KeepSkinOfAnyToneWithinOneDeltaE) {
    for (const char* name : {"FL2", "FL7", "FL11", "LED-B1", "LED-B3", "LED-B5", "A", "D55", "D65"}) {
        const auto light = cie_illuminant(name);
        ASSERT_TRUE(light) << name;
        for (const double melanin : {0.013, 0.03, 0.063, 0.13, 0.25, 0.43}) {
            for (const double blood : {0.002, 0.02, 0.05, 0.1}) {
                EXPECT_LT(loss(skin_reflectance(melanin, blood), *light), 1.0)
                    << name << ", melanin " << melanin << ", blood " << blood;
            }
        }
    }
}

TEST(Bands, LoseNothingOfAGreyCard) {
    for (const char* name : {"FL11", "A"}) EXPECT_LT(loss(Spectrum(0.18F), *cie_illuminant(name)), 1e-3);
}

// Guards the check above: were the skin's curve flat it would prove nothing. Zijlstra and others' textbook bands of
// oxyhaemoglobin lie at 542 and 576 nm, with a window between, and skin is reddest at the long end.
TEST(Bands, AreHeldAgainstSkinWithBloodInIt) {
    const Spectrum skin = skin_reflectance(0.02, 0.05);
    EXPECT_LT(skin.at(575.0F), skin.at(560.0F));
    EXPECT_LT(skin.at(540.0F), skin.at(560.0F));
    EXPECT_GT(skin.at(650.0F), 1.5F * skin.at(575.0F));
}

TEST(Bands, CoverTheRangeInRisingOrder) {
    EXPECT_EQ(kBandEdges.front(), kShortestWave);
    EXPECT_EQ(kBandEdges.back(), kLongestWave);
    for (std::size_t i = 0; i < kBandCount; ++i) EXPECT_LT(kBandEdges[i], kBandEdges[i + 1]);
}

TEST(Bands, IntegralsAddUpToTheWhole) {
    const Spectrum light = *cie_illuminant("FL11");
    double sum = 0.0;
    for (const float part : band_integrals(light)) sum += static_cast<double>(part);
    EXPECT_NEAR(sum, integral(light), 1e-5 * sum);
}

// ∫ of a straight line by hand: (383.5² − 381²)/2 and so on.
TEST(Integral, IsExactForAStraightLine) {
    const Spectrum line = Spectrum::tabulate([](float nm) { return nm; });
    EXPECT_NEAR(integral(line, 381.0, 383.5), 955.625, 1e-3);
    EXPECT_NEAR(integral(line, 383.0, 401.0), 7056.0, 1e-2);
    EXPECT_NEAR(integral(line, 380.0, 780.0), 232000.0, 0.1);
    EXPECT_EQ(integral(line, 500.0, 500.0), 0.0);
}

}  // namespace
}  // namespace understudy
