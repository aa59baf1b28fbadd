#include "scatter/skin.h"

#include <array>

#include <gtest/gtest.h>

#include "scatter/coated_surface.h"
#include "scatter/haemoglobin.h"

namespace understudy {
namespace {

double crossing(double from_nm, double to_nm) {
    const auto surplus = [](double nm) {
        const MolarExtinction e = haemoglobin_extinction(nm);
        return e.oxygenated - e.deoxygenated;
    };
    const double sign = surplus(from_nm) > 0.0 ? 1.0 : -1.0;
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (from_nm + to_nm);
        (sign * surplus(middle) > 0.0 ? from_nm : to_nm) = middle;
    }
    return from_nm;
}

// Where both forms absorb alike; the usual round figures in pulse oximetry are 422, 452, 500, 529, 545, 570 and 584 nm
// (van Assendelft, Spectrophotometry of Haemoglobin Derivatives, 1970; from memory).
TEST(Haemoglobin, CrossesAtTheIsosbesticPoints) {
    EXPECT_NEAR(crossing(416, 430), 422.0, 1.0);
    EXPECT_NEAR(crossing(446, 470), 452.0, 1.0);
    EXPECT_NEAR(crossing(490, 510), 500.0, 1.0);
    EXPECT_NEAR(crossing(520, 535), 529.0, 1.0);
    EXPECT_NEAR(crossing(538, 556), 545.0, 1.0);
    EXPECT_NEAR(crossing(562, 575), 570.0, 1.0);
    EXPECT_NEAR(crossing(578, 595), 584.0, 1.0);
}

// S. Prahl's table and his conversion to whole blood.
TEST(Haemoglobin, GivesWholeBloodItsAbsorption) {
    const auto expect = [](double nm, double oxygenated, double deoxygenated) {
        EXPECT_NEAR(blood_absorption_per_cm(nm, 1.0), oxygenated, 1e-4 * oxygenated);
        EXPECT_NEAR(blood_absorption_per_cm(nm, 0.0), deoxygenated, 1e-4 * deoxygenated);
    };
    expect(450, 336.43, 553.21);
    expect(500, 112.11, 111.73);
    expect(550, 230.39, 286.06);
    expect(576, 297.46, 214.73);
    expect(600, 17.139, 78.608);
    expect(650, 1.9709, 20.0849);
    expect(700, 1.5532, 9.6098);
    EXPECT_NEAR(blood_absorption_per_cm(550, 0.75), 244.31, 0.03);
    EXPECT_NEAR(blood_absorption_per_cm(600, 0.75), 32.506, 0.004);
}

// Jacques, January 1998: the two laws worked out apart from this program.
TEST(Skin, FollowsTheLawsOfMelaninAndBaseline) {
    EXPECT_NEAR(melanosome_absorption_per_cm(400), 1427.86, 0.15);
    EXPECT_NEAR(melanosome_absorption_per_cm(550), 494.47, 0.05);
    EXPECT_NEAR(melanosome_absorption_per_cm(700), 221.50, 0.03);
    EXPECT_NEAR(baseline_absorption_per_cm(400), 2.31942, 1e-5);
    EXPECT_NEAR(baseline_absorption_per_cm(550), 0.45931, 1e-5);
    EXPECT_NEAR(baseline_absorption_per_cm(700), 0.26634, 1e-5);
    EXPECT_NEAR(dermis_scattering_per_cm(400), 72.804, 1e-3);
    EXPECT_NEAR(dermis_scattering_per_cm(550), 36.592, 1e-3);
    EXPECT_NEAR(dermis_scattering_per_cm(700), 25.945, 1e-3);
    EXPECT_NEAR(epidermis_scattering_per_cm(400), 102.452, 1e-3);
    EXPECT_NEAR(epidermis_scattering_per_cm(550), 57.559, 1e-3);
    EXPECT_NEAR(epidermis_scattering_per_cm(700), 42.593, 1e-3);
}

TEST(Skin, DarkensWithMelaninAtEveryWave) {
    const std::array<double, 6> fractions = {0.0, 0.02, 0.06, 0.13, 0.3, 0.5};
    for (std::size_t i = 0; i + 1 < fractions.size(); ++i) {
        const Spectrum lighter = skin_albedo(fractions[i], 0.02);
        const Spectrum darker = skin_albedo(fractions[i + 1], 0.02);
        for (std::size_t k = 0; k < Spectrum::kCount; ++k) {
            EXPECT_LT(darker[k], lighter[k]);
            EXPECT_GT(darker[k], 0.0F);
            EXPECT_LT(lighter[k], 1.0F);
        }
    }
}

// Blood takes green at its two bands and leaves red.
TEST(Skin, ReddensWithBlood) {
    const Spectrum pale = skin_albedo(0.02, 0.005);
    const Spectrum flushed = skin_albedo(0.02, 0.06);
    for (const float band : {545.0F, 575.0F}) {
        EXPECT_LT(flushed.at(band), flushed.at(630.0F));
        EXPECT_LT(flushed.at(band) / pale.at(band), 0.8F * flushed.at(630.0F) / pale.at(630.0F));
    }
    // The double dip of oxygenated blood, with its rise between.
    EXPECT_GT(flushed.at(560.0F), flushed.at(545.0F));
    EXPECT_GT(flushed.at(560.0F), flushed.at(575.0F));
}

// Measured light skin reflects a half to two thirds of deep red, its surface reflection with it (Angelopoulou,
// "Understanding the Color of Human Skin", SPIE 4299, 2001; from memory), dark skin well under a half of light skin's
// green.
TEST(Skin, IsAsLightAsMeasured) {
    const CoatedSurface skin(skin_albedo(0.02, 0.02), kSkinIndex, kSkinRoughness);
    const float light = albedo(skin, Waves{{650.0F, 650.0F, 650.0F, 650.0F}, {}}).x;
    EXPECT_GT(light, 0.5F);
    EXPECT_LT(light, 0.8F);
    EXPECT_LT(skin_albedo(0.3, 0.02).at(550.0F), 0.5F * skin_albedo(0.02, 0.02).at(550.0F));
}

}  // namespace
}  // namespace understudy
