// How power, dials, ways out of range, marks of f-numbers and pupils are told, in text and in JSON.
#include <array>
#include <cmath>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "report/power_text.h"
#include "report/report_json.h"
#include "report/report_text.h"
#include "report/sample_report.h"
#include "report/ways_out_text.h"

namespace understudy {
namespace {

using Values = nlohmann::ordered_json;

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

MeterReport in_range() {
    MeterReport report = filled_report();
    report.powers[0].dial = DialReading{"big", "1/8 + 0.3", "1/256 to 1/1", -2.7, 0.03, 0.0, {}};
    return report;
}

TEST(PowerText, SaysWhatTheTubeAndTheModifierAreTakenFor) {
    MeterReport report = in_range();
    report.powers[0].modifier_efficiency = 0.5;
    const std::string text = powers_text(report);
    EXPECT_TRUE(has(text, "40.0 lm·s/J")) << text;
    EXPECT_TRUE(has(text, "50 %")) << text;
    // The range of published figures for whole studio systems: makers' and teachers' pages.
    EXPECT_TRUE(has(text, "from 15 to 50")) << text;
    EXPECT_TRUE(has(text, "2000 lm")) << text;
}

TEST(PowerText, SaysThatAnEfficacyIsFromAReading) {
    MeterReport report = in_range();
    report.powers[0].efficacy_from = EfficacyFrom::kReading;
    report.powers[0].efficacy_lms_per_j = 33.3;
    EXPECT_TRUE(has(powers_text(report), "33.3 lm·s a joule, from the reading"));
    EXPECT_FALSE(has(powers_text(report), "check the reading"));
    EXPECT_FALSE(has(powers_text(report), "not yours"));
    report.powers[0].efficacy_lms_per_j = 90.0;
    EXPECT_TRUE(has(powers_text(report), "check the reading"));
}

TEST(PowerText, GivesTheDialInTheHeadsNotation) {
    const std::string text = powers_text(in_range());
    for (const char* part : {"big", "1/8 + 0.3", "-2.7", "+0.3", "1/256 to 1/1", "-6.5"}) {
        EXPECT_TRUE(has(text, part)) << part << " is missing from\n" << text;
    }
    EXPECT_FALSE(has(text, "out of range"));
}

// f/8 is 1.5 stops over what the head gives: f/4.757, the half stop between 4.5 and 5, "4 + 5/10" on a meter.
TEST(PowerText, OutOfRangeNamesTheWaysOut) {
    const std::string text = powers_text(filled_report());
    for (const char* part :
         {"key is out of range: 1.5 stops more than small gives at 1/1", "4 + 5/10",
          "1. 0.75 m from the face (+1.5 stops)", "2.0 times as large", "0.50 stops in place of 0.25"}) {
        EXPECT_TRUE(has(text, part)) << part << " is missing from\n" << text;
    }
}

// Every way has a number and a side effect.
TEST(PowerText, EveryWayOutHasItsSideEffect) {
    const auto ways = std::to_array<Remedy>({{Remedy::Kind::kIso, 400.0, 2.0, true, 0, 0, 1},
                                             {Remedy::Kind::kIso, 50.0, -1.0, true, 0, 0, 1},
                                             {Remedy::Kind::kNeutralDensity, 0.6, -1.99, true, 0, 0, 1},
                                             {Remedy::Kind::kDistance, 2.0, -2.0, true, 0.5, 0.25, 0.5},
                                             {Remedy::Kind::kClothOut, 0.0, 0.7, false, 0, 0, 1},
                                             {Remedy::Kind::kClothIn, 0.0, -0.7, true, 0, 0, 1}});
    const auto words =
        std::to_array<const char*>({"ISO 400 (+2.0 stops)", "ISO 50 (-1.0 stops)", "neutral density 0.60",
                                    "2.00 m from the face", "cloth out (+0.7", "cloth in (-0.7"});
    for (std::size_t i = 0; i < ways.size(); ++i) {
        EXPECT_TRUE(has(way_text(ways[i]), words[i])) << way_text(ways[i]);
        EXPECT_GT(side_effect_text(ways[i]).size(), 20U);
    }
    EXPECT_TRUE(has(side_effect_text(ways[0]), "+2.0"));
    EXPECT_TRUE(has(side_effect_text(ways[1]), "not every camera"));
    EXPECT_TRUE(has(side_effect_text(ways[3]), "harder"));
}

// Five stops under adds log2(1 + 2^-5) = 0.044 stop, under half a tenth; three stops add 0.17.
TEST(PowerText, SaysWhenAModellingLampWouldShow) {
    MeterReport report = in_range();
    EXPECT_FALSE(has(powers_text(report), "turn the lamp down"));
    report.powers[0].modelling_stops = -3.0;
    EXPECT_TRUE(
        has(powers_text(report), "key: so weak a flash leaves its modelling lamp in a real picture, -3.0 stops"));
}

TEST(PowerText, Pupils) {
    EXPECT_TRUE(has(pupil_text(filled_report()), "3.2 mm wide, 126 lx")) << pupil_text(filled_report());
    MeterReport report = filled_report();
    report.pupil = PupilReading{4.0, 0.0, PupilFrom::kUsual};
    EXPECT_TRUE(has(pupil_text(report), "no lamp that is on all the time"));
    EXPECT_EQ(pupil_text(empty_report()), "");
}

TEST(PowerJson, DialWaysOutAndPupil) {
    const Values json = Values::parse(report_json(filled_report()));
    const Values& dial = json["powers"][0]["dial"];
    EXPECT_TRUE(dial["setting"].is_null());  // no setting of that head gives it
    EXPECT_EQ(dial["out_by_stops"], 1.5);
    EXPECT_EQ(dial["ways_out"][0]["way"], "distance");
    EXPECT_EQ(dial["ways_out"][0]["value"], 0.75);
    EXPECT_EQ(json["powers"][0]["efficacy_from"], "usual");
    EXPECT_EQ(json["powers"][0]["modelling_lamp_stops"], -6.5);
    EXPECT_TRUE(json["powers"][1]["efficacy_lms_per_j"].is_null());
    EXPECT_TRUE(json["powers"][1]["dial"].is_null());
    EXPECT_EQ(json["pupil"]["from"], "standing light");
    EXPECT_TRUE(Values::parse(report_json(empty_report()))["pupil"].is_null());
    const Values set = Values::parse(report_json(in_range()))["powers"][0]["dial"];
    EXPECT_EQ(set["setting"], "1/8 + 0.3");
    EXPECT_TRUE(set["out_by_stops"].is_null());
}

// 160 lx·s is f/8 at ISO 100, 120 is f/6.928: 5.585 stops, a third mark of 7.1 and 5.6 + 6/10.
TEST(PowerJson, FNumbersAsPeopleReadThem) {
    const Values json = Values::parse(report_json(filled_report()));
    EXPECT_EQ(json["meter"][0]["f_number_marked"], "f/8");
    EXPECT_EQ(json["meter"][0]["f_number_meter"], "8 + 0/10");
    EXPECT_EQ(json["meter"][0]["by_light"][0]["f_number_marked"], "f/7.1");
    EXPECT_EQ(json["meter"][0]["by_light"][0]["f_number_meter"], "5.6 + 6/10");
    EXPECT_EQ(json["exposure"]["aperture_marked"], "f/4");
    EXPECT_TRUE(Values::parse(report_json(empty_report()))["meter"][0]["f_number_marked"].is_null());
}

TEST(PowerJson, RatioSaysStopsAndPoints) {
    const Values ratio = Values::parse(report_json(filled_report()))["ratio"];
    EXPECT_NEAR(ratio["face_key_to_fill_stops"], 2.0 * std::log2(11.0 / 8.0), 1e-12);
    EXPECT_TRUE(has(ratio["cheeks_measured_at"], "cheek-camera-left"));
    EXPECT_TRUE(has(ratio["face_measured_at"], "dome"));
}

}  // namespace
}  // namespace understudy
