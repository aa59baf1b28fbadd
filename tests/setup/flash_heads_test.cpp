// [flash.NAME], a light's dial, lux at the face: what is read, and what is refused with file, line and key.
#include <cmath>
#include <fstream>

#include <gtest/gtest.h>

#include "scratch_library.h"

namespace understudy {
namespace {

const std::string kHead = "[flash.big]\nenergy = \"500 J\"\n";

understudy::Setup read(const std::string& text) {
    const ScratchLibrary scratch;
    const auto setup = scratch.parse(text);
    EXPECT_TRUE(setup) << all_text(setup ? Problems{} : setup.problems());
    return setup ? *setup : understudy::Setup{};
}

std::string lit(const std::string& head, const std::string& power) {
    return head + "[[light]]\nmodifier = \"bulb\"\nflash = \"big\"\n" + power + "\n";
}

TEST(FlashHeads, WhatIsLeftOutHasADefault) {
    const auto setup = read(lit(kHead, "dial = \"1/8 + 0.3\""));
    ASSERT_EQ(setup.flashes.size(), 1U);
    const FlashHead& head = setup.flashes[0];
    EXPECT_EQ(head.name, "big");
    EXPECT_EQ(head.full_energy_j, 500.0);
    EXPECT_EQ(dial_range_text(head.dial), "1/256 to 1/1");
    EXPECT_FALSE(head.efficacy_lms_per_j);
    EXPECT_FALSE(head.calibration);
    EXPECT_EQ(head.modelling_lamp_lm, 0.0);
    EXPECT_EQ(setup.lights[0].flash, 0U);
    EXPECT_EQ(std::get<PowerFromDial>(setup.lights[0].power).steps, -27);
}

TEST(FlashHeads, EveryKey) {
    const auto setup =
        read(lit("[flash.other]\nenergy = 200\ndial = \"stops\"\nlowest = -6\nstep = \"thirds\"\n"
                 "efficacy = 35\nmodelling_lamp = \"250 W\"\n"
                 "[flash.big]\nenergy = \"400 Ws\"\ndial = \"scale\"\nlowest = 2.0\nhighest = 10.0\n"
                 "modelling_lamp = \"1500 lm\"\n"
                 "calibration = { modifier = \"octa-120\", dial = 7.3, distance = \"1.5 m\", "
                 "reads = \"5.6 + 3/10\", iso = 200 }\n",
                 "dial = 6.5"));
    ASSERT_EQ(setup.flashes.size(), 2U);
    const FlashHead& other = setup.flashes[1];  // heads come in the order of their names
    EXPECT_EQ(dial_range_text(other.dial), "-6.0 to 0.0");
    EXPECT_EQ(other.dial.steps_a_stop, 3);
    EXPECT_EQ(other.efficacy_lms_per_j, 35.0);
    EXPECT_EQ(other.modelling_lamp_lm, 4000.0);  // 16 lm/W of halogen
    const FlashHead& big = setup.flashes[0];
    EXPECT_EQ(dial_range_text(big.dial), "2.0 to 10.0");
    EXPECT_EQ(big.modelling_lamp_lm, 1500.0);
    ASSERT_TRUE(big.calibration);
    EXPECT_EQ(big.calibration->modifier.name, "octa-120");
    EXPECT_EQ(big.calibration->steps, -27);
    EXPECT_EQ(big.calibration->distance_m, 1.5);
    EXPECT_NEAR(big.calibration->f_number, std::exp2(5.3 / 2.0), 1e-12);
    EXPECT_EQ(big.calibration->iso, 200.0);
    EXPECT_EQ(setup.lights[0].flash, 0U);
    EXPECT_EQ(std::get<PowerFromDial>(setup.lights[0].power).steps, -35);
}

TEST(FlashHeads, AnyOtherPowerGoesWithAHead) {
    for (const char* power : {"meter = 8", "energy = 100"}) {
        EXPECT_EQ(read(lit(kHead, power)).lights[0].flash, 0U) << power;
    }
}

TEST(FlashHeads, AFileOfOnesOwn) {
    const ScratchLibrary scratch;
    std::ofstream(scratch.folder() / "mine.toml") << "[flash.mine]\nenergy = 300\n";
    const auto setup = scratch.parse("flashes = \"mine.toml\"\n" + kHead +
                                     "[[light]]\nmodifier = \"bulb\"\nflash = \"mine\"\nmeter = 4\n");
    ASSERT_TRUE(setup) << all_text(setup.problems());
    ASSERT_EQ(setup->flashes.size(), 2U);
    EXPECT_EQ(setup->flashes[*setup->lights[0].flash].full_energy_j, 300.0);
}

TEST(FlashHeads, AMistakeInThatFileIsToldWithItsOwnPlace) {
    const ScratchLibrary scratch;
    std::ofstream(scratch.folder() / "mine.toml") << "[flash.mine]\nenergy = \"300 K\"\n";
    const auto setup = scratch.parse("flashes = \"mine.toml\"\n[[light]]\nmodifier = \"bulb\"\nmeter = 4\n");
    ASSERT_FALSE(setup);
    ASSERT_EQ(setup.problems().size(), 1U) << all_text(setup.problems());
    EXPECT_NE(setup.problems()[0].text.find("mine.toml:2:10: [flash.mine] energy"), std::string::npos)
        << setup.problems()[0].text;
}

TEST(FlashHeads, LuxMakesALightContinuous) {
    const auto setup = read("[[light]]\nmodifier = \"bulb\"\nlux = \"400 lx\"\n");
    EXPECT_EQ(setup.lights[0].source, SourceKind::kContinuous);
    EXPECT_EQ(std::get<PowerFromIlluminance>(setup.lights[0].power).lux, 400.0);
}

TEST(FlashHeads, APupilOfOnesOwn) {
    EXPECT_EQ(read("[sitter]\npupil = \"4 mm\"\n[[light]]\nmodifier = \"bulb\"\nmeter = 4\n").sitter.pupil_m, 0.004);
    EXPECT_FALSE(read("[[light]]\nmodifier = \"bulb\"\nmeter = 4\n").sitter.pupil_m);
}

// 5.6 is what is engraved for 4√2, on the camera and at the meter alike.
TEST(FlashHeads, FNumbersAreReadAsTheirMarks) {
    const auto setup = read("[camera]\naperture = 5.6\n[[light]]\nmodifier = \"bulb\"\nmeter = \"8 + 3/10\"\n");
    EXPECT_NEAR(setup.camera.exposure.aperture, 4.0 * std::sqrt(2.0), 1e-12);
    EXPECT_NEAR(std::get<PowerFromMeter>(setup.lights[0].power).f_number, std::exp2(6.3 / 2.0), 1e-12);
}

struct BadHead {
    std::string text;
    std::string at;
    std::vector<std::string> words;
};
void PrintTo(const BadHead& bad, std::ostream* stream) { *stream << bad.text; }

class BadHeads : public testing::TestWithParam<BadHead> {};

TEST_P(BadHeads, AreToldWithTheirPlaceAndWhatWasExpected) {
    const ScratchLibrary scratch;
    const auto setup = scratch.parse(GetParam().text);
    ASSERT_FALSE(setup);
    EXPECT_EQ(setup.problems().size(), 1U) << all_text(setup.problems());
    const std::string text = setup.problems().front().text;
    EXPECT_EQ(text.find((scratch.folder() / "scene.toml").string() + ":" + GetParam().at + ": "), 0U) << text;
    EXPECT_NE(text.find("; expected "), std::string::npos) << text;
    for (const std::string& word : GetParam().words) EXPECT_NE(text.find(word), std::string::npos) << text;
}

// A line 3 of the head's table.
BadHead head(const std::string& line, const std::string& at, std::vector<std::string> words) {
    return {lit(kHead + line + "\n", "meter = 8"), at, std::move(words)};
}

// Line 6, the power of a light with the head of 500 J.
BadHead power(const std::string& line, const std::string& at, std::vector<std::string> words) {
    return {lit(kHead, line), at, std::move(words)};
}

BadHead calibration(const std::string& inside, const std::string& at, std::vector<std::string> words) {
    return head("calibration = { " + inside + " }", at, std::move(words));
}

INSTANTIATE_TEST_SUITE_P(
    Table, BadHeads,
    testing::Values(BadHead{"flash = 3\n[[light]]\nmodifier = \"bulb\"\nmeter = 4\n", "1:9", {"flash", "[flash]"}},
                    BadHead{"[flash]\nbig = 3\n[[light]]\nmodifier = \"bulb\"\nmeter = 4\n", "2:1", {"[flash.big]"}},
                    BadHead{lit("[flash.big]\n", "meter = 8"), "1:1", {"[flash.big]", "no energy"}},
                    BadHead{lit("[flash.big]\nenergy = -5\n", "meter = 8"), "2:10", {"energy", "-5 J"}},
                    BadHead{lit("[flash.big]\nenergy = nan\n", "meter = 8"), "2:10", {"energy", "nan"}},
                    head("enrgy = 3", "3:1", {"\"enrgy\"", "did you mean \"energy\"?"}),
                    head("dial = \"decimal\"", "3:8", {"decimal", "fractions, stops, scale"}),
                    head("step = \"halves\"", "3:8", {"halves", "tenths, thirds"}),
                    head("lowest = \"1/3\"", "3:10", {"lowest", "1/3", "a part of full power"}),
                    head("lowest = \"1/1\"", "3:10", {"lowest", "under full"}),
                    head("lowest = 0.5", "3:10", {"lowest", "1/4"}),
                    head("highest = 10", "3:1", {"highest", "no scale"}),
                    head("dial = \"scale\"\nlowest = 2.0", "1:1", {"without its highest", "highest = 10.0"}),
                    head("dial = \"scale\"\nhighest = 9.0", "1:1", {"lowest", "lowest = 2.0"}),
                    head("efficacy = 0", "3:12", {"efficacy", "1 to 200"}),
                    head("efficacy = nan", "3:12", {"efficacy", "1 to 200"}),
                    head("modelling_lamp = \"250 J\"", "3:18", {"modelling_lamp", "lm, W"}),
                    head("modelling_lamp = -1", "3:18", {"modelling_lamp", "-1"}),
                    BadHead{"flashes = \"no.toml\"\n[[light]]\nmodifier = \"bulb\"\nmeter = 4\n",
                            "1:11",
                            {"flashes", "no.toml", "cannot be read"}},
                    BadHead{"flashes = 3\n[[light]]\nmodifier = \"bulb\"\nmeter = 4\n", "1:11", {"a string"}}));

INSTANTIATE_TEST_SUITE_P(
    Calibration, BadHeads,
    testing::Values(
        head("calibration = 5.6", "3:15", {"calibration", "reads = 5.6"}),
        calibration(R"(modifier = "octa-121", dial = "1/8", distance = 1.5, reads = 8)", "3:28",
                    {"calibration modifier", "octa-121", "did you mean \"octa-120\"?"}),
        calibration(R"(modifier = "bulb", dial = "-3.0", distance = 1.5, reads = 8)", "3:43",
                    {"calibration dial", "-3.0", "part of full power"}),
        calibration(R"(modifier = "bulb", dial = "1/512", distance = 1.5, reads = 8)", "3:43", {"1/256 to 1/1"}),
        calibration(R"(modifier = "bulb", dial = "1/8", distance = -1.5, reads = 8)", "3:61", {"distance", "-1.5 m"}),
        calibration(R"(modifier = "bulb", dial = "1/8", distance = nan, reads = 8)", "3:61", {"distance", "nan"}),
        calibration(R"(modifier = "bulb", dial = "1/8", distance = 1.5, reads = 0)", "3:74", {"reads", "0.5 to 128"}),
        calibration(R"(modifier = "bulb", dial = "1/8", distance = 1.5, reads = nan)", "3:74", {"reads"}),
        calibration(R"(modifier = "bulb", dial = "1/8", distance = 1.5, reads = "8 + 3")", "3:74", {"8 + 3/10"}),
        calibration(R"(modifier = "bulb", dial = "1/8", distance = 1.5, reads = 8, iso = 0)", "3:83", {"iso"}),
        calibration(R"(dial = "1/8", distance = 1.5, reads = 8)", "3:15", {"no modifier"}),
        calibration(R"(modifier = "bulb", dial = "1/8", distance = 1.5)", "3:15", {"no reads"}),
        calibration(R"(modifier = "bulb", dial = "1/8", distance = 1.5, reads = 8, sio = 3)", "3:77",
                    {"\"sio\"", "did you mean \"iso\"?"}),
        head("efficacy = 30\ncalibration = { modifier = \"bulb\", dial = \"1/8\", distance = 1.5, reads = 8 }", "3:1",
             {"both efficacy and calibration"})));

INSTANTIATE_TEST_SUITE_P(
    Light, BadHeads,
    testing::Values(
        power("dial = \"1/512\"", "6:8", {"dial", "1/512", "1/256 to 1/1"}),
        power("dial = \"1/1 + 0.1\"", "6:8", {"dial", "1/256 to 1/1"}),
        power("dial = \"-3.0\"", "6:8", {"dial", "not in the head's notation"}),
        power("dial = 7.3", "6:8", {"dial", "number 7.3", "1/4"}), power("dial = nan", "6:8", {"dial"}),
        power("dial = \"1/8 + 0.25\"", "6:8", {"between two steps"}),
        power("dial = \"1/8\"\nmeter = 8", "6:1", {"power twice", "meter, dial"}),
        power("lux = 400", "6:1", {"flash with lux"}), power("lumens = 400", "6:1", {"flash with lumens"}),
        power("source = \"continuous\"\nmeter = 4", "5:1", {"continuous light with flash"}),
        power("meter = \"8 + 3\"", "6:9", {"meter", "8 + 3/10"}),
        power("meter = \"512 + 9/10\"", "6:9", {"meter", "0.1 to 512"}),
        BadHead{"[[light]]\nmodifier = \"bulb\"\ndial = \"1/8\"\n", "3:1", {"dial but no flash", "[flash.NAME]"}},
        BadHead{"[[light]]\nmodifier = \"bulb\"\nflash = \"big\"\nmeter = 8\n", "3:9", {"no flash head", "flashes"}},
        BadHead{kHead + "[[light]]\nmodifier = \"bulb\"\nflash = \"bog\"\nmeter = 8\n", "5:9", {"mean \"big\"?"}},
        BadHead{"[[light]]\nmodifier = \"bulb\"\nlux = -4\n", "3:7", {"lux", "-4 lx"}},
        BadHead{"[[light]]\nmodifier = \"bulb\"\nlux = nan\n", "3:7", {"lux", "nan"}},
        BadHead{"[[light]]\nmodifier = \"bulb\"\nlux = \"400 lm\"\n", "3:7", {"lux", "units lx"}},
        BadHead{"[[light]]\nmodifier = \"bulb\"\nsource = \"flash\"\nlux = 4\n", "4:1", {"flash with lux"}},
        BadHead{"[sitter]\npupil = 12\n[[light]]\nmodifier = \"bulb\"\nmeter = 4\n", "2:9", {"pupil", "0.001 m"}},
        BadHead{"[sitter]\npupil = nan\n[[light]]\nmodifier = \"bulb\"\nmeter = 4\n", "2:9", {"pupil", "nan"}},
        BadHead{"[[light]]\nname = \"depth\"\nmodifier = \"bulb\"\nmeter = 4\n", "2:8", {"depth", "EXR"}},
        BadHead{"[[light]]\nname = \"normal\"\nmodifier = \"bulb\"\nmeter = 4\n", "2:8", {"normal", "EXR"}},
        BadHead{"[[light]]\nname = \"albedo\"\nmodifier = \"bulb\"\nmeter = 4\n", "2:8", {"albedo", "EXR"}},
        BadHead{"[[light]]\nname = \"feature 2\"\nmodifier = \"bulb\"\nmeter = 4\n", "2:8", {"feature 2", "EXR"}}));

// A file of heads must not shadow a head of the scene in silence.
TEST(FlashHeads, TwoOfOneNameAreRefused) {
    const ScratchLibrary scratch;
    std::ofstream(scratch.folder() / "mine.toml") << "\n[flash.big]\nenergy = 300\n";
    const auto setup = scratch.parse("flashes = \"mine.toml\"\n" + lit(kHead, "meter = 4"));
    ASSERT_FALSE(setup);
    EXPECT_NE(setup.problems()[0].text.find("mine.toml:2:"), std::string::npos) << setup.problems()[0].text;
    EXPECT_NE(setup.problems()[0].text.find("a second flash head is named \"big\""), std::string::npos);
}

}  // namespace
}  // namespace understudy
