// A flash head's dial, its calibration by one reading, what to do out of range, lux, and pupils.
#include <cmath>

#include "film/exposure.h"
#include "meter/standing_light.h"
#include "meter/ways_out.h"
#include "metered.h"

namespace understudy {
namespace {

const std::string kIso100 = "[camera]\niso = 100\nshutter = \"1/160\"\n";

std::string head(const std::string& keys) { return "[flash.big]\nenergy = \"500 J\"\n" + keys + "\n"; }

// A light of the head that faces the meter at eye height.
std::string driven(const std::string& modifier, const std::string& distance, const std::string& power) {
    return kEmpty + kIso100 + "[[light]]\nmodifier = " + modifier + "\nflash = \"big\"\nelevation = 0\ndistance = \"" +
           distance + "\"\n" + power + "\n";
}

LightPower power_of(const std::string& toml) {
    const Studio studio = studio_from(toml);
    const Stage nobody(studio, Stage::With::kNobody);
    return value_of(set_powers(studio, nobody)).powers[0];
}

const std::string kBox = "{ shape = \"rectangle\", width = 0.9, height = 0.9, efficiency = 0.5 }";

// 500 J at 40 lm·s/J through half of a box of 0.9 × 0.9 m: exitance 12345.679 lx·s, configuration factor 0.10237 at
// 1.5 m, 1263.849 lx·s, f/22.484 (rectangle of a configuration factor catalogue); each halving of the dial is a stop.
TEST(FlashHead, TheDialHalves) {
    for (const auto& [dial, stops] : {std::pair{"1/1", 0.0}, {"1/8", -3.0}, {"1/8 + 0.3", -2.7}, {"1/256", -8.0}}) {
        const LightPower power = power_of(driven(kBox, "1.5 m", std::string("dial = \"") + dial + "\"") + head(""));
        EXPECT_NEAR(power.energy_j, 500.0 * std::exp2(stops), 1e-9) << dial;
        // The reading is known to 0.1 % of its light, a twentieth of that in f-number.
        EXPECT_NEAR(power.f_number, 22.484 * std::exp2(0.5 * stops), 0.002 * 22.484 * std::exp2(0.5 * stops)) << dial;
        EXPECT_EQ(power.dial->setting, dial);
        EXPECT_NEAR(power.dial->left_over_stops, 0.0, 1e-12);
        EXPECT_EQ(power.efficacy_lms_per_j, 40.0);
        EXPECT_EQ(power.efficacy_from, EfficacyFrom::kUsual);
        EXPECT_EQ(power.modifier_efficiency, 0.5);
    }
}

// The same chain backwards: told f/22.484 at full, the head has 40 lm·s/J; told a stop less light, 20.
TEST(FlashHead, OneReadingGivesTheEfficacy) {
    const std::string reading =
        "calibration = { modifier = " + kBox + R"(, dial = "1/1", distance = "1.5 m", reads = )";
    const LightPower as_usual = power_of(driven(kBox, "1.5 m", "meter = 8") + head(reading + "22.484 }"));
    EXPECT_NEAR(as_usual.efficacy_lms_per_j, 40.0, 0.003 * 40.0);
    EXPECT_EQ(as_usual.efficacy_from, EfficacyFrom::kReading);
    const double weaker = 22.484 / std::sqrt(2.0);
    EXPECT_NEAR(
        power_of(driven(kBox, "1.5 m", "meter = 8") + head(reading + std::to_string(weaker) + " }")).efficacy_lms_per_j,
        20.0, 0.003 * 20.0);
    // Twice the ISO, the same aperture: half of the light.
    EXPECT_NEAR(power_of(driven(kBox, "1.5 m", "meter = 8") + head(reading + "22.484, iso = 200 }")).efficacy_lms_per_j,
                20.0, 0.003 * 20.0);
}

// What the reading was is what the calibrated head gives at that setting, whatever its light really is.
TEST(FlashHead, TheCalibratedHeadReadsWhatItRead) {
    const LightPower power = power_of(
        driven("\"octa-120\"", "1.5 m", "dial = \"1/8\"") +
        head(R"(calibration = { modifier = "octa-120", dial = "1/8", distance = "1.5 m", reads = 5.6, iso = 100 })"));
    // Two readings of 0.1 % of the light each.
    EXPECT_NEAR(2.0 * std::log2(power.f_number / (4.0 * std::sqrt(2.0))), 0.0, 0.01);
}

// A bare tube sends I = Φ/4π all around: 5.6 read at 1/8 means 8.0 reads at 1/4 and at 1/1 twice as far (inverse
// square: −2 stops), to the nearest tenth.
TEST(FlashHead, PrescribesTheDial) {
    const std::string bulb = "{ shape = \"sphere\", diameter = 0.05 }";
    const std::string calibrated =
        head("calibration = { modifier = " + bulb + R"(, dial = "1/8", distance = "1 m", reads = 5.6 })");
    const auto setting = [&](const char* distance, const char* power) {
        return power_of(driven(bulb, distance, power) + calibrated).dial->setting;
    };
    EXPECT_EQ(setting("1 m", "meter = 8"), "1/4");
    EXPECT_EQ(setting("2 m", "meter = 8"), "1/1");
    EXPECT_EQ(setting("1 m", "meter = \"5.6 + 3/10\""), "1/8 + 0.3");
    EXPECT_EQ(setting("1 m", "meter = 2.8"), "1/32");
}

TEST(FlashHead, AThirdsHeadLeavesTenthsOver) {
    const LightPower power = power_of(driven(kBox, "1.5 m", "energy = 100") + head("step = \"thirds\""));
    // log2(100/500) = -2.322: the nearest third is -2.333, 0.11 tenths below.
    EXPECT_EQ(power.dial->setting, "1/8 + 0.7");
    EXPECT_NEAR(power.dial->left_over_stops, -std::log2(5.0) + 7.0 / 3.0, 1e-9);
    EXPECT_TRUE(power.dial->ways_out.empty());
}

TEST(FlashHead, AReadingThatNoLightCanGiveIsRefused) {
    const Studio studio =
        studio_from(driven(kBox, "1.5 m", "meter = 8") + head("calibration = { modifier = " + kBox +
                                                              R"(, dial = "1/256", distance = "1.5 m", reads = 64 })"));
    const auto lit = set_powers(studio, Stage(studio, Stage::With::kNobody));
    ASSERT_FALSE(lit);
    EXPECT_NE(lit.problems()[0].text.find("test.toml:17:15: the calibration of [flash.big]"), std::string::npos)
        << lit.problems()[0].text;
}

const Remedy* way(const std::vector<Remedy>& ways, Remedy::Kind kind) {
    for (const Remedy& remedy : ways) {
        if (remedy.kind == kind) return &remedy;
    }
    return nullptr;
}

// f/45 from a box that reads f/22.484 at full is 2.02 stops too much. ISO 400 gives two of them, which is near enough;
// twice as near (inverse square alone) would too.
TEST(FlashHead, TooWeak) {
    const LightPower power = power_of(driven(kBox, "1.5 m", "meter = 45") + head(""));
    ASSERT_TRUE(power.dial);
    EXPECT_NEAR(power.dial->out_by_stops, 2.0 * std::log2(45.25483 / 22.484), 0.01);
    EXPECT_EQ(power.dial->setting, "1/1");
    const Remedy* iso = way(power.dial->ways_out, Remedy::Kind::kIso);
    ASSERT_NE(iso, nullptr);
    EXPECT_EQ(iso->value, 400.0);
    EXPECT_NEAR(iso->stops, 2.0, 1e-9);
    EXPECT_EQ(way(power.dial->ways_out, Remedy::Kind::kClothOut), nullptr);  // nobody knows what it is built of
    EXPECT_EQ(way(power.dial->ways_out, Remedy::Kind::kNeutralDensity), nullptr);
    const Remedy* nearer = way(power.dial->ways_out, Remedy::Kind::kDistance);
    ASSERT_NE(nearer, nullptr);
    // An area gains less than a point by coming near, so it has to come nearer than half of the way.
    EXPECT_LT(nearer->value, 0.75);
    EXPECT_NEAR(nearer->looks_as_large, 1.5 / nearer->value, 1e-9);
    EXPECT_GT(nearer->fall_off_after, nearer->fall_off_before);
    const LightPower moved = power_of(driven(kBox, std::to_string(nearer->value) + " m", "meter = 45") + head(""));
    EXPECT_EQ(moved.dial->setting, "1/1");
    EXPECT_EQ(moved.dial->out_by_stops, 0.0);
}

// A bare bulb at 1/256 of 500 J: 78.125 lm·s, 6.217 cd·s, at 1 m f/1.577; f/1 is 1.314 stops under that. Neutral
// density 0.45 (1.495 stops) is the least that is enough: density 0.3 is a stop (log10 2 = 0.301). A small source goes
// by inverse square: 2^(1.314/2) times as far.
TEST(FlashHead, TooStrong) {
    const std::string bulb = "{ shape = \"sphere\", diameter = 0.02 }";
    const LightPower power = power_of(driven(bulb, "1 m", "meter = 1") + head(""));
    EXPECT_NEAR(power.dial->out_by_stops, -1.314, 0.01);
    const Remedy* density = way(power.dial->ways_out, Remedy::Kind::kNeutralDensity);
    ASSERT_NE(density, nullptr);
    EXPECT_NEAR(density->value, 0.45, 1e-9);
    const Remedy* iso = way(power.dial->ways_out, Remedy::Kind::kIso);
    EXPECT_EQ(iso, nullptr);  // a third and a stop under ISO 100 is under ISO 50
    const Remedy* farther = way(power.dial->ways_out, Remedy::Kind::kDistance);
    ASSERT_NE(farther, nullptr);
    EXPECT_NEAR(farther->value, std::exp2(1.314 / 2.0), 0.01);
    EXPECT_EQ(way(power.dial->ways_out, Remedy::Kind::kClothIn), nullptr);  // a bare bulb has none
}

// One layer of cloth in a box takes 0.7 to 1 stop (common practice, no source; half a stop either way is allowed here);
// and what is promised is what the kit's box without its inner cloth reads.
TEST(FlashHead, AClothTakenOutGivesWhatTheBoxWithoutItReads) {
    const auto box = [](const char* name) {
        return power_of(driven(std::string("\"") + name + "\"", "1.5 m", "meter = 64") + head(""));
    };
    const LightPower with = box("octa-120");
    const LightPower without = box("octa-120-no-inner");
    const Remedy* cloth = way(with.dial->ways_out, Remedy::Kind::kClothOut);
    ASSERT_NE(cloth, nullptr);
    EXPECT_GT(cloth->stops, 0.2);
    EXPECT_LT(cloth->stops, 1.5);
    // Both readings are known to 0.1 %, which is 0.0014 stop, three of each.
    EXPECT_NEAR(cloth->stops, std::log2(with.energy_j / without.energy_j), 0.01);
    EXPECT_FALSE(cloth->enough);
    EXPECT_EQ(way(without.dial->ways_out, Remedy::Kind::kClothOut), nullptr);  // no second one to take out
}

TEST(FlashHead, AClothHungIntoABoxOrOverADishTakesLight) {
    for (const char* name : {"\"octa-120-no-inner\"", "\"dish-55\""}) {
        const LightPower power = power_of(driven(name, "1.5 m", "meter = 1") + head("lowest = \"1/16\""));
        const Remedy* cloth = way(power.dial->ways_out, Remedy::Kind::kClothIn);
        ASSERT_NE(cloth, nullptr) << name;
        EXPECT_LT(cloth->stops, 0.0) << name;
        EXPECT_GT(cloth->stops, -2.0) << name;
    }
}

// 250 W of halogen at 16 lm/W against 500 J at 40 lm·s/J: 25 lm·s in 1/160 s against 20 000, 9.6 stops.
TEST(FlashHead, TheModellingLampIsFarUnderTheFlash) {
    const LightPower power = power_of(driven(kBox, "1.5 m", "dial = \"1/1\"") + head("modelling_lamp = \"250 W\""));
    ASSERT_TRUE(power.modelling_stops);
    EXPECT_NEAR(*power.modelling_stops, -9.644, 0.001);
}

// 400 lx at ISO 100 is 2.5 · 2^EV lx with EV 7.32 (ISO 2720, C = 250): N² = E·t·S/C at 1/160 s.
TEST(Continuous, LuxAtTheFace) {
    const LightPower power = power_of(kEmpty + kIso100 + "[[light]]\nmodifier = " + kBox + "\nlux = \"400 lx\"\n");
    EXPECT_FALSE(power.flash);
    EXPECT_NEAR(power.lux, 400.0, 1e-9);
    EXPECT_NEAR(power.f_number, 1.0, 1e-9);
    EXPECT_NEAR(ev100(power.f_number, 1.0 / 160.0, 100.0), ev100_of_illuminance(400.0), 1e-9);
}

PupilReading pupil_of(const std::string& toml) {
    const Studio studio = studio_from(toml);
    const Stage nobody(studio, Stage::With::kNobody);
    return read_pupil(studio, nobody, value_of(set_powers(studio, nobody)));
}

TEST(PupilReading, FlashAloneLeavesItAsUsual) {
    const PupilReading pupil = pupil_of(driven(kBox, "1.5 m", "dial = \"1/1\"") + head(""));
    EXPECT_EQ(pupil.from, PupilFrom::kUsual);
    EXPECT_EQ(pupil.illuminance_lx, 0.0);
    EXPECT_NEAR(pupil.diameter_mm, 4.0, 0.05);  // in ordinary indoor light; common practice, no source
}

// A lamp of 250 W in the box of the chain above: 4000 lm, half of it out, exitance 2469.136 lx, factor 0.10237: 252.77
// lx square to it; the sitter looks past it at the camera, 60° away: half of that. Corneal flux density 126.385 ·
// 3282.81 cd/m² deg².
TEST(PupilReading, TheModellingLampSetsIt) {
    const std::string scene = driven(kBox, "1.5 m", "angle = 60\ndial = \"1/1\"") + head("modelling_lamp = \"250 W\"");
    const PupilReading pupil = pupil_of(scene);
    EXPECT_EQ(pupil.from, PupilFrom::kStandingLight);
    EXPECT_NEAR(pupil.illuminance_lx, 0.5 * 252.77, 0.03 * 0.5 * 252.77);  // read to 1 %
    // Not the flash's power but the lamp's sets it.
    const std::string weaker =
        driven(kBox, "1.5 m", "angle = 60\ndial = \"1/64\"") + head("modelling_lamp = \"250 W\"");
    EXPECT_NEAR(pupil_of(weaker).illuminance_lx, pupil.illuminance_lx, 0.01);
    const double bent = std::pow(pupil.illuminance_lx * 3282.81 / 846.0, 0.41);
    const double reference = 7.75 - 5.75 * bent / (bent + 2.0);
    EXPECT_NEAR(pupil.diameter_mm, reference + 1.42 * (0.02132 - 0.009562 * reference), 1e-3);
}

TEST(PupilReading, RoomAndLampsAdd) {
    const std::string lamp =
        kEmpty + kIso100 + "[[light]]\nmodifier = " + kBox + "\nelevation = 0\nangle = 0\ndistance = 4\nlux = 100\n";
    const double lamp_lx = pupil_of(lamp).illuminance_lx;
    EXPECT_NEAR(lamp_lx, 100.0, 2.0);
    EXPECT_NEAR(pupil_of(lamp + "[room]\nambient = \"50 lx\"\n").illuminance_lx, lamp_lx + 50.0, 3.0);
}

TEST(PupilReading, TheScenesOwnWordCounts) {
    const PupilReading pupil =
        pupil_of("[sitter]\nhead = \"none\"\npupil = \"6 mm\"\n[[light]]\nmodifier = \"bulb\"\nlux = 100\n");
    EXPECT_EQ(pupil.from, PupilFrom::kTold);
    EXPECT_NEAR(pupil.diameter_mm, 6.0, 1e-12);
}

}  // namespace
}  // namespace understudy
