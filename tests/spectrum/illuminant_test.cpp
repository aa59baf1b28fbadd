#include "spectrum/illuminant.h"

#include <gtest/gtest.h>

#include <array>
#include <string>

#include "spectrum/colour.h"
#include "spectrum/observer.h"

namespace understudy {
namespace {

Chromaticity table_chromaticity(const Spectrum& light) {
    return chromaticity_of({integral(light * observer_x(), 380.0, 780.0), integral(light * observer_y(), 380.0, 780.0),
                            integral(light * observer_z(), 380.0, 780.0)});
}

struct White {
    const char* name;
    double x;
    double y;
};

// CIE 15:2004 tables 11.1 and T.3, CIE 15:2018 for the LEDs; given to four or five decimals. The last three are those
// of ISO 7589's tables by colour-science's list of white points.
constexpr auto kWhites = std::to_array<White>({{"A", 0.44758, 0.40745},
                                               {"D50", 0.34567, 0.35850},
                                               {"D55", 0.33243, 0.34744},
                                               {"D65", 0.31271, 0.32902},
                                               {"D75", 0.29903, 0.31488},
                                               {"E", 0.33333, 0.33333},
                                               {"FL2", 0.3721, 0.3751},
                                               {"FL7", 0.3129, 0.3292},
                                               {"FL11", 0.3805, 0.3769},
                                               {"LED-B1", 0.4560, 0.4078},
                                               {"LED-B2", 0.4357, 0.4012},
                                               {"LED-B3", 0.3756, 0.3723},
                                               {"LED-B4", 0.3422, 0.3502},
                                               {"LED-B5", 0.3118, 0.3236},
                                               {"LED-BH1", 0.4474, 0.4066},
                                               {"LED-RGB1", 0.4557, 0.4211},
                                               {"LED-V1", 0.4548, 0.4044},
                                               {"LED-V2", 0.3781, 0.3775},
                                               {"F2", 0.3721, 0.3751},
                                               {"F7", 0.3129, 0.3292},
                                               {"F11", 0.3805, 0.3769},
                                               {"xenon-flash", 0.33204, 0.34726},
                                               {"studio-tungsten", 0.43094, 0.40359},
                                               {"photoflood", 0.41115, 0.39372}});

TEST(Illuminant, HasItsPublishedWhitePoint) {
    for (const White& white : kWhites) {
        const auto light = cie_illuminant(white.name);
        ASSERT_TRUE(light) << white.name;
        const Chromaticity colour = table_chromaticity(*light);
        EXPECT_NEAR(colour.x, white.x, 1e-4) << white.name;
        EXPECT_NEAR(colour.y, white.y, 1e-4) << white.name;
    }
    EXPECT_EQ(cie_illuminant_names().size(), kWhites.size());
}

// Spot values of the tables in CIE 15:2004: T.1 for A and D65, T.3 for D50 and D55.
TEST(Illuminant, HasTheTablesSpotValues) {
    EXPECT_NEAR(cie_illuminant("A")->at(400.0F), 14.7080F, 1e-3F);
    EXPECT_NEAR(cie_illuminant("A")->at(450.0F), 33.0859F, 1e-3F);
    EXPECT_NEAR(cie_illuminant("A")->at(650.0F), 165.028F, 1e-3F);
    EXPECT_NEAR(cie_illuminant("D65")->at(450.0F), 117.008F, 2e-3F);
    EXPECT_NEAR(cie_illuminant("D65")->at(650.0F), 80.0268F, 2e-3F);
    EXPECT_NEAR(cie_illuminant("D50")->at(450.0F), 87.247F, 2e-3F);
    EXPECT_NEAR(cie_illuminant("D50")->at(650.0F), 95.667F, 2e-3F);
    EXPECT_NEAR(cie_illuminant("D55")->at(450.0F), 97.993F, 2e-3F);
    EXPECT_NEAR(cie_illuminant("D55")->at(650.0F), 88.854F, 2e-3F);
}

TEST(Illuminant, IsNoneForAnUnknownName) {
    EXPECT_FALSE(cie_illuminant("FL99"));
    EXPECT_FALSE(cie_illuminant(""));
    EXPECT_FALSE(cie_illuminant("d65"));
}

// CIE 15:2004 equations 3.1 to 3.3, evaluated by colour-science's published test vectors.
TEST(Daylight, LiesOnTheCiesLocus) {
    const auto locus = std::to_array<White>(
        {{"4000", 0.382343625, 0.383766261}, {"7000", 0.305357431, 0.321646345}, {"25000", 0.24985367, 0.254799464}});
    const std::array kelvins{4000.0, 7000.0, 25000.0};
    for (std::size_t i = 0; i < 3; ++i) {
        // The components are tabulated to four figures, hence the last 0.0001.
        const Chromaticity colour = table_chromaticity(daylight_spectrum(kelvins[i]));
        EXPECT_NEAR(colour.x, locus[i].x, 1.5e-4) << locus[i].name;
        EXPECT_NEAR(colour.y, locus[i].y, 1.5e-4) << locus[i].name;
    }
}

// Planck's law through the CIE 1 nm observer, 360–830 nm; the 5 nm table over 380–780 nm differs in the fifth decimal.
TEST(Planck, HasItsChromaticity) {
    const auto bodies = std::to_array<White>({{"2000", 0.526677, 0.413297},
                                              {"2856", 0.447535, 0.407428},
                                              {"3200", 0.423360, 0.398952},
                                              {"4000", 0.380440, 0.376747},
                                              {"5500", 0.332434, 0.341035},
                                              {"6500", 0.313526, 0.323628},
                                              {"10000", 0.280634, 0.288288}});
    for (const White& body : bodies) {
        const Chromaticity colour = table_chromaticity(planck_spectrum(std::stod(body.name)));
        EXPECT_NEAR(colour.x, body.x, 1e-4) << body.name;
        EXPECT_NEAR(colour.y, body.y, 1e-4) << body.name;
    }
}

// CIE 1960 u, v of the Planckian locus, Planck 1900 by colour-science's published test vectors.
TEST(Planck, HasItsChromaticityInTheUniformDiagram) {
    const auto check = [](double kelvin, double u, double v) {
        const Chromaticity colour = table_chromaticity(planck_spectrum(kelvin));
        const double divisor = -2.0 * colour.x + 12.0 * colour.y + 3.0;
        EXPECT_NEAR(4.0 * colour.x / divisor, u, 1e-4) << kelvin;
        EXPECT_NEAR(6.0 * colour.y / divisor, v, 1e-4) << kelvin;
    };
    check(4000.0, 0.225109670, 0.334387367);
    check(7000.0, 0.198126929, 0.307025981);
}

TEST(Temperature, IsABlackBodyUpTo4000KAndDaylightFromThere) {
    EXPECT_EQ(spectrum_of_temperature(3200.0).at(450.0F), planck_spectrum(3200.0).at(450.0F));
    EXPECT_EQ(spectrum_of_temperature(4000.0).at(450.0F), daylight_spectrum(4000.0).at(450.0F));
    EXPECT_EQ(spectrum_of_temperature(25000.0).at(450.0F), daylight_spectrum(25000.0).at(450.0F));
    EXPECT_EQ(spectrum_of_temperature(40000.0).at(450.0F), planck_spectrum(40000.0).at(450.0F));
}

// The correlated colour temperature comes back by an independent formula, McCamy 1992, whose stated error is a few
// kelvin here.
TEST(Temperature, ComesBackFromTheColour) {
    for (const double kelvin : {2856.0, 3200.0, 4000.0, 5000.0, 5500.0, 6500.0, 7500.0}) {
        const Chromaticity colour = table_chromaticity(spectrum_of_temperature(kelvin));
        EXPECT_NEAR(correlated_colour_temperature(colour), kelvin, 12.0) << kelvin;
    }
}

}  // namespace
}  // namespace understudy
