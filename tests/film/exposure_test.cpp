#include "film/exposure.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace understudy {
namespace {

// ISO 2720:1974's equations with C = 250 and K = 12.5; the numbers are colour-hdri's published test vectors.
TEST(Exposure, AnswersPublishedVectors) {
    struct Vector {
        double f_number, shutter_s, iso, luminance, illuminance;
    };
    const auto vectors = std::to_array<Vector>({{8.0, 1.0, 100.0, 8.0, 160.0},
                                                {2.8, 0.125, 100.0, 7.84, 156.8},
                                                {5.6, 0.5, 800.0, 0.98, 19.6},
                                                {8.0, 1.0, 16000.0, 0.05, 1.0}});
    for (const Vector& v : vectors) {
        const double ev = ev100(v.f_number, v.shutter_s, v.iso);
        EXPECT_NEAR(illuminance_of_ev100(ev), v.illuminance, 1e-9);
        EXPECT_NEAR(luminance_of_ev100(ev), v.luminance, 1e-9);
        EXPECT_NEAR(exposure_of_f_number(v.f_number, v.iso) / v.shutter_s, v.illuminance, 1e-9);
    }
    EXPECT_NEAR(ev100_of_luminance(0.125), 0.0, 1e-12);
    EXPECT_NEAR(ev100_of_luminance(0.25), 1.0, 1e-12);
    EXPECT_NEAR(ev100_of_luminance(0.125, 14.0), -0.16349873, 1e-8);
    EXPECT_NEAR(ev100_of_illuminance(2.5), 0.0, 1e-12);
    EXPECT_NEAR(ev100_of_illuminance(5.0), 1.0, 1e-12);
    EXPECT_NEAR(ev100_of_illuminance(0.125, kIncidentDome), -4.76553475, 1e-8);
    EXPECT_NEAR(ev100(8.0, 1.0 / 250.0, 100.0), 13.96578428, 1e-8);
    EXPECT_NEAR(ev100(5.6, 1.0 / 500.0, 800.0), 10.93663794, 1e-8);
    EXPECT_NEAR(ev100(2.8, 1.0 / 1000.0, 1600.0), 8.93663794, 1e-8);
}

// The exposure value table at ISO 100: 2.5 · 2^EV lx, 2^(EV − 3) cd/m² (ISO 2720's constants as commonly tabulated).
TEST(Exposure, HasTheExposureValueTable) {
    const auto table = std::to_array<std::array<double, 3>>({{-4, 0.15625, 0.0078125},
                                                             {-2, 0.625, 0.03125},
                                                             {0, 2.5, 0.125},
                                                             {1, 5, 0.25},
                                                             {2, 10, 0.5},
                                                             {3, 20, 1},
                                                             {5, 80, 4},
                                                             {7, 320, 16},
                                                             {9, 1280, 64},
                                                             {12, 10240, 512},
                                                             {14, 40960, 2048},
                                                             {15, 81920, 4096}});
    for (const auto& row : table) {
        EXPECT_NEAR(illuminance_of_ev100(row[0]), row[1], 1e-9 * row[1]);
        EXPECT_NEAR(luminance_of_ev100(row[0]), row[2], 1e-9 * row[2]);
    }
    EXPECT_NEAR(ev100(8.0, 1.0 / 256.0, 100.0), 14.0, 1e-12);
    EXPECT_NEAR(ev100_of_illuminance(300.0), 6.907, 5e-4);
}

// N = sqrt(H · S / C): lx·s at ISO 100, f-number of a flat receptor, of a dome.
TEST(Exposure, ReadsAFlashAsAnFNumber) {
    const auto table = std::to_array<std::array<double, 3>>({{1, 0.6325, 0.5423},
                                                             {10, 2.0, 1.7150},
                                                             {100, 6.3246, 5.4233},
                                                             {160, 8.0, 6.8599},
                                                             {250, 10.0, 8.5749},
                                                             {640, 16.0, 13.7199},
                                                             {1000, 20.0, 17.1499}});
    for (const auto& row : table) {
        EXPECT_NEAR(f_number_of_exposure(row[0], 100.0), row[1], 5e-5);
        EXPECT_NEAR(f_number_of_exposure(row[0], 100.0, kIncidentDome), row[2], 5e-5);
    }
    EXPECT_NEAR(exposure_of_f_number(8.0, 100.0), 160.0, 1e-12);
    EXPECT_NEAR(exposure_of_f_number(16.0, 100.0, kIncidentDome), 870.4, 1e-9);
    EXPECT_NEAR(f_number_of_exposure(exposure_of_f_number(5.6, 400.0), 400.0), 5.6, 1e-12);
}

TEST(Exposure, CountsStops) {
    EXPECT_NEAR(stops_between(100.0, 400.0), 2.0, 1e-12);
    EXPECT_NEAR(stops_between(250.0, kIncidentDome), 0.4436, 5e-5);
    EXPECT_NEAR(stops_between_f_numbers(4.0, 8.0), 2.0, 1e-12);
    EXPECT_NEAR(stops_between_f_numbers(8.0, 5.656854249), -1.0, 1e-9);
}

// N · d = GN. 1000 cd·s is GN 20 m at C = 250; doubling the ISO takes it by √2; the handbook form
// GN(ft) = √(0.05 · BCPS · ISO) is the same law with C = 215.28 and GN 100 for 2000.
TEST(GuideNumber, FollowsFromTheIncidentEquation) {
    EXPECT_NEAR(guide_number_m(1000.0, 100.0), 20.0, 1e-12);
    EXPECT_NEAR(guide_number_m(9000.0, 100.0), 60.0, 1e-12);
    EXPECT_NEAR(guide_number_m(8410.0, 100.0), 58.0, 1e-9);
    EXPECT_NEAR(guide_number_m(8410.0, 200.0), 82.024, 5e-4);
    EXPECT_NEAR(guide_number_m(8410.0, 400.0), 116.0, 1e-9);
    EXPECT_NEAR(guide_number_m(2000.0, 100.0, 215.278) / 0.3048, 100.0, 1e-3);
    // GN 32 m at 4 m: f/8, whatever the flash; here from its illuminance there.
    const double intensity = 32.0 * 32.0 * kIncidentFlat / 100.0;
    EXPECT_NEAR(f_number_of_exposure(intensity / (4.0 * 4.0), 100.0), 8.0, 1e-12);
}

}  // namespace
}  // namespace understudy
