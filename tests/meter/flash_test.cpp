// Flash output, guide numbers and distance.

#include <cmath>

#include "film/exposure.h"
#include "metered.h"

namespace understudy {
namespace {

const std::string kIso100 = "[camera]\niso = 100\n";

std::string bulb(const std::string& power, const std::string& distance) {
    // A globe that keeps nothing back.
    const std::string globe = R"({ shape = "sphere", diameter = "10 cm" })";
    return kEmpty + kIso100 + "[[light]]\nmodifier = " + globe + "\nelevation = 0\ndistance = \"" + distance + "\"\n" +
           power + "\n";
}

double key_exposure(const std::string& toml) {
    return face_reading(metered(toml), Receptor::kFlat, Facing::kKey).exposure_lxs;
}

// A bare tube of 40 lm·s/J and 500 J sends 20 000 lm·s all around: 1591.5 cd·s, 397.887 lx·s at 2 m, f/12.616.
TEST(Flash, ABareBulbOfFiveHundredJoules) {
    const MeterReport report = metered(bulb("energy = 500", "2 m"));
    const Reading reading = face_reading(report, Receptor::kFlat, Facing::kKey);
    expect_reading(reading, 397.887, 0.003, "500 J");
    EXPECT_NEAR(reading.f_number, 12.616, 0.02);
    EXPECT_NEAR(report.powers[0].lumens, 20000.0, 1e-6);
    EXPECT_NEAR(report.powers[0].energy_j, 500.0, 1e-9);
}

// A guide number is N·d; half the energy is GN/√2, a quarter GN/2, ISO 400 twice.
TEST(Flash, GuideNumbersGoWithTheRootOfTheEnergy) {
    const auto guide = [](const char* energy) {
        return 3.0 *
               face_reading(metered(bulb(std::string("energy = ") + energy, "3 m")), Receptor::kFlat, Facing::kKey)
                   .f_number;
    };
    const double whole = guide("400");
    EXPECT_NEAR(whole / guide("200"), std::sqrt(2.0), 0.01);
    EXPECT_NEAR(whole / guide("100"), 2.0, 0.01);
    // √(I·S/C): 400 J · 40 lm·s/J / 4π = 1273.24 cd·s.
    EXPECT_NEAR(whole, std::sqrt(1273.24 * 100.0 / 250.0), 0.05);
}

// Flashes from one direction add up: GN = √(Σ GN²), 58 and 40 make 70.456; in feet, GN 80 at 10 ft and GN 120 at 15 ft
// are both f/8 (worked examples of vintage flash manuals).
TEST(Flash, GuideNumbersAddAsLight) {
    const auto intensity = [](double guide_m) { return guide_m * guide_m * kIncidentFlat / 100.0; };
    EXPECT_NEAR(guide_number_m(intensity(58.0) + intensity(40.0), 100.0), 70.456, 5e-4);
    EXPECT_NEAR(guide_number_m(intensity(58.0), 50.0), 41.012, 5e-4);
    for (const auto& [guide_ft, distance_ft] : {std::pair{80.0, 10.0}, {120.0, 15.0}, {160.0, 20.0}}) {
        const double exposure = intensity(guide_ft * 0.3048) / std::pow(distance_ft * 0.3048, 2.0);
        EXPECT_NEAR(f_number_of_exposure(exposure, 100.0), 8.0, 1e-12);
    }
}

// −2 log2(d₂/d₁) for a small source.
TEST(Flash, InverseSquareInStops) {
    const double near = key_exposure(bulb("energy = 100", "1 m"));
    struct Row {
        const char* distance;
        double stops;
    };
    for (const Row& row : {Row{"1.1 m", -0.275}, Row{"1.25 m", -0.644}, Row{"1.41421356 m", -1.0}, Row{"2 m", -2.0},
                           Row{"3 m", -3.170}, Row{"4 m", -4.0}}) {
        EXPECT_NEAR(std::log2(key_exposure(bulb("energy = 100", row.distance)) / near), row.stops, 0.01)
            << row.distance;
    }
}

// A box of 0.9 × 0.9 m, 500 J, half of it lost: 1263.849 lx·s at 1.5 m, f/22.484; 2956.253 at 0.9 m, f/34.388.
TEST(Flash, ABoxFromEnergyToStop) {
    struct Row {
        const char* distance;
        double exposure, f_number;
    };
    for (const Row& row : {Row{"1.5 m", 1263.849, 22.484}, Row{"0.9 m", 2956.253, 34.388}}) {
        const MeterReport report =
            metered(kEmpty + kIso100 +
                    "[[light]]\nmodifier = { shape = \"rectangle\", width = 0.9, height = 0.9, efficiency = 0.5 }\n"
                    "elevation = 0\nenergy = \"500 J\"\ndistance = \"" +
                    row.distance + "\"\n");
        const Reading reading = face_reading(report, Receptor::kFlat, Facing::kKey);
        expect_reading(reading, row.exposure, 0.003, row.distance);
        EXPECT_NEAR(reading.f_number, row.f_number, 0.1);
    }
}

TEST(Flash, StopsFromTheKeyAreStops) {
    for (const double stops : {-1.0, -2.0, 0.5}) {
        const MeterReport report =
            metered(kEmpty +
                    "[[light]]\nmodifier = \"octa-120\"\nmeter = 5.6\n"
                    "[[light]]\nmodifier = \"strip-30x120\"\nangle = 120\ndistance = 1.6\nfrom_key = " +
                    std::to_string(stops) + "\n");
        EXPECT_NEAR(2.0 * std::log2(report.powers[1].f_number / report.powers[0].f_number), stops, 1e-6);
    }
}

// Bounce is part of what a light reads: a light set by the meter beside a white wall needs less energy.
TEST(Flash, AWhiteWallHelpsTheMeter) {
    const std::string light = "[[light]]\nmodifier = \"bulb\"\nmeter = 4\n";
    const double open = metered(kEmpty + light).powers[0].energy_j;
    const double room = metered(kEmpty + light + "[room]\nsize = [4.0, 5.0, 2.7]\nwalls = 0.8\n").powers[0].energy_j;
    EXPECT_LT(room, 0.9 * open);
}

TEST(Flash, ALightThatMissesTheFaceCannotBeSetByAReadingThere) {
    const Studio studio = studio_from(
        kEmpty + "[[light]]\nmodifier = \"softbox-60x90\"\nposition = [0, 1.25, 1]\naim = [0, 1.25, 5]\nmeter = 4\n");
    const auto lit = set_powers(studio, Stage(studio, Stage::With::kNobody));
    ASSERT_FALSE(lit);
    EXPECT_NE(lit.problems().front().text.find("test.toml:6:1: "), std::string::npos) << lit.problems().front().text;
}

}  // namespace
}  // namespace understudy
