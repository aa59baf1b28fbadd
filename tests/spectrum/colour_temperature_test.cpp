#include "spectrum/colour_temperature.h"

#include <gtest/gtest.h>

#include <array>
#include <string>

#include "spectrum/illuminant.h"
#include "spectrum/observer.h"

namespace understudy {
namespace {

struct Known {
    const char* name;
    double kelvin;
    double duv;
};

// The nearest black body in CIE 1960 u, v by the CIE's 1 nm observer over 360–830 nm, from the chromaticities of
// CIE 15:2004 and CIE 15:2018 and of ISO 7589; where the CIE prints a temperature it agrees (2856, 5003, 5503, 6504,
// 4230, 4000, 2733, 2998, 4103, 5109, 6598). Those chromaticities have four decimals: half of the last is up to 6 K at
// 5000 K, and 0.0001 in u, v.
constexpr auto kKnown = std::to_array<Known>({{"A", 2855.5, 0.00000},           {"D50", 5000.6, 0.00319},
                                              {"D55", 5502.3, 0.00325},         {"D65", 6504.2, 0.00321},
                                              {"D75", 7504.9, 0.00314},         {"E", 5455.4, -0.00442},
                                              {"FL2", 4223.4, 0.00177},         {"FL7", 6491.9, 0.00321},
                                              {"FL11", 3999.5, 0.00005},        {"LED-B1", 2732.8, -0.00071},
                                              {"LED-B2", 2997.2, -0.00098},     {"LED-B3", 4103.0, -0.00065},
                                              {"LED-B4", 5108.3, 0.00047},      {"LED-B5", 6598.2, 0.00087},
                                              {"LED-BH1", 2851.4, -0.00030},    {"LED-RGB1", 2840.3, 0.00426},
                                              {"LED-V1", 2723.1, -0.00188},     {"LED-V2", 4069.8, 0.00105},
                                              {"xenon-flash", 5518.8, 0.00334}, {"studio-tungsten", 3099.5, 0.00067},
                                              {"photoflood", 3399.4, 0.00007}});

TEST(NearestBlackBody, OfTheTabulatedLamps) {
    for (const Known& lamp : kKnown) {
        const auto found = nearest_colour_temperature(xyz_of(*cie_illuminant(lamp.name)));
        ASSERT_TRUE(found) << lamp.name;
        EXPECT_NEAR(found->kelvin, lamp.kelvin, 6.0) << lamp.name;
        EXPECT_NEAR(found->duv, lamp.duv, 1e-4) << lamp.name;
    }
}

TEST(NearestBlackBody, IsABlackBodyItself) {
    for (const double kelvin : {1500.0, 2856.0, 3200.0, 4000.0, 5500.0, 7000.0, 25000.0}) {
        const auto found = nearest_colour_temperature(xyz_of(planck_spectrum(kelvin)));
        ASSERT_TRUE(found) << kelvin;
        // The search stops at 1e-4 mired, and the spectrum is in single precision.
        EXPECT_NEAR(mired(found->kelvin), mired(kelvin), 1e-3) << kelvin;
        EXPECT_NEAR(found->duv, 0.0, 1e-6) << kelvin;
    }
}

// CIE 15:2004 section 9.5: no temperature beyond 0.05. sRGB's primaries are all farther off.
TEST(NearestBlackBody, IsNoneForAColour) {
    EXPECT_FALSE(nearest_colour_temperature(xyz_of_linear_srgb({0.0, 1.0, 0.0})));
    EXPECT_FALSE(nearest_colour_temperature(xyz_of_linear_srgb({0.0, 0.0, 1.0})));
    EXPECT_FALSE(nearest_colour_temperature(xyz_of_linear_srgb({1.0, 0.0, 1.0})));
    EXPECT_TRUE(nearest_colour_temperature(kD65White));
}

// CIE 1960 u, v of the black bodies, by colour-science's published test vectors of Planck's law.
TEST(UniformChromaticity, OfBlackBodies) {
    const auto check = [](double kelvin, double u, double v) {
        const UniformChromaticity uniform = uniform_chromaticity_of(xyz_of(planck_spectrum(kelvin)));
        EXPECT_NEAR(uniform.u, u, 1e-4) << kelvin;
        EXPECT_NEAR(uniform.v, v, 1e-4) << kelvin;
    };
    check(4000.0, 0.225109670, 0.334387367);
    check(7000.0, 0.198126929, 0.307025981);
}

// 10⁶ over kelvin, worked by hand; the printed shifts of conversion gels have no decimals.
TEST(Mired, ArithmeticByHand) {
    EXPECT_NEAR(mired(3200.0), 312.5, 1e-9);
    EXPECT_NEAR(mired(5500.0), 181.818, 5e-4);
    EXPECT_NEAR(mired(2856.0), 350.140, 5e-4);
    EXPECT_NEAR(mired(6500.0), 153.846, 5e-4);
    EXPECT_NEAR(mired(3200.0) - mired(5500.0), 130.68, 5e-3);
    EXPECT_NEAR(mired(5700.0) - mired(3200.0), -137.06, 5e-3);
    EXPECT_NEAR(mired(4300.0) - mired(3200.0), -79.94, 5e-3);
    EXPECT_NEAR(mired(3600.0) - mired(3200.0), -34.72, 5e-3);
    EXPECT_NEAR(shifted_kelvin(5500.0, 159.0), 2934.1, 0.05);
    EXPECT_NEAR(shifted_kelvin(5500.0, 109.0), 3438.6, 0.05);
    EXPECT_NEAR(shifted_kelvin(5500.0, 64.0), 4068.0, 0.05);
    EXPECT_NEAR(shifted_kelvin(5500.0, 26.0), 4811.9, 0.05);
    EXPECT_NEAR(shifted_kelvin(3200.0, -137.0), 5698.0, 0.05);
    EXPECT_NEAR(shifted_kelvin(3200.0, -78.0), 4264.4, 0.05);
    EXPECT_NEAR(shifted_kelvin(3200.0, -35.0), 3603.6, 0.05);
    EXPECT_NEAR(shifted_kelvin(3200.0, -18.0), 3395.6, 0.05);
}

}  // namespace
}  // namespace understudy
