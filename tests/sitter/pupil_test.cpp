// Pupil diameters against published formulae and the values worked out from them.
#include "sitter/pupil.h"

#include <array>
#include <cmath>

#include <gtest/gtest.h>

namespace understudy {
namespace {

// At L·a = 846 the bent flux is 1: 7.75 − 5.75/3.
TEST(Pupil, StanleyAndDaviesAtTheirReference) { EXPECT_NEAR(stanley_davies_pupil_mm(846.0), 5.8333, 5e-5); }

// Watson and Yellott 2012 (doi 10.1167/12.10.12), worked out from their equations in another program: cd/m²; fields of
// 100 deg² (30 years, 60 years, 30 years and one eye) and of 1600 deg² (30 years).
TEST(Pupil, WatsonAndYellottsUnifiedFormula) {
    const auto table = std::to_array<std::array<double, 5>>({{0.01, 7.5017, 5.9685, 7.6063, 7.1675},
                                                             {0.1, 7.2498, 5.7899, 7.5017, 6.5312},
                                                             {1.0, 6.6971, 5.3980, 7.2498, 5.4421},
                                                             {10.0, 5.6970, 4.6887, 6.6971, 4.1283},
                                                             {50.0, 4.7890, 4.0448, 6.0458, 3.3444},
                                                             {100.0, 4.3899, 3.7617, 5.6970, 3.0754},
                                                             {1000.0, 3.2530, 2.9554, 4.3899, 2.4747}});
    for (const auto& row : table) {
        EXPECT_NEAR(watson_yellott_pupil_mm(row[0] * 100.0, 2, 30.0), row[1], 5e-5) << row[0];
        EXPECT_NEAR(watson_yellott_pupil_mm(row[0] * 100.0, 2, 60.0), row[2], 5e-5) << row[0];
        EXPECT_NEAR(watson_yellott_pupil_mm(row[0] * 100.0, 1, 30.0), row[3], 5e-5) << row[0];
        EXPECT_NEAR(watson_yellott_pupil_mm(row[0] * 1600.0, 2, 30.0), row[4], 5e-5) << row[0];
    }
}

// A small field straight ahead: its illuminance is luminance times solid angle, and 1600 deg² are 1600 (π/180)² sr.
TEST(Pupil, IlluminanceCountsAsLuminanceTimesSquareDegrees) {
    const double steradians = 1600.0 * std::pow(std::acos(-1.0) / 180.0, 2.0);
    EXPECT_NEAR(pupil_mm_of_illuminance(100.0 * steradians), 3.0754, 5e-5);
    EXPECT_NEAR(pupil_mm_of_illuminance(1.0 * steradians), 5.4421, 5e-5);
}

TEST(Pupil, NeverWiderThanInTheDarkNorNarrowerThanPeopleHave) {
    double wider = 8.0;
    for (double lux = 0.0; lux < 1e6; lux = 2.0 * lux + 0.01) {
        const double mm = pupil_mm_of_illuminance(lux);
        EXPECT_LT(mm, wider) << lux;
        EXPECT_GT(mm, 1.9) << lux;  // 2 to 8 mm: handbook range, Watson and Yellott 2012
        wider = mm;
    }
}

// The schematic eyes' entrance pupil is 1.13 times as wide as the pupil itself (Gullstrand; Le Grand: 8 mm seen
// of 7.1).
TEST(Pupil, TheCorneaMagnifiesIt) {
    EXPECT_NEAR(kPupilMagnification, 1.13, 0.015);
    EXPECT_NEAR(2e3 * pupil_radius_behind_cornea_m(0.008), 7.1, 0.1);
    EXPECT_NEAR(pupil_seen_m(pupil_radius_behind_cornea_m(0.004)), 0.004, 1e-15);
}

}  // namespace
}  // namespace understudy
