// What the report says of backdrop, room, warnings and cautions.

#include <cmath>
#include <set>
#include <string>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "report/report_json.h"
#include "report/report_text.h"
#include "report/sample_report.h"
#include "report/warning_words.h"

namespace understudy {
namespace {

using Read = nlohmann::ordered_json;
using Keys = std::vector<std::string>;

Keys keys_of(const Read& json) {
    Keys keys;
    for (const auto& item : json.items()) keys.push_back(item.key());
    return keys;
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

constexpr std::array kEveryKind{WarningKind::kOverhead,    WarningKind::kBelowFloor,     WarningKind::kCeiling,
                                WarningKind::kOutsideRoom, WarningKind::kBehindBackdrop, WarningKind::kLensBlocked,
                                WarningKind::kInPicture,   WarningKind::kIntoLens,       WarningKind::kGlassesGlare,
                                WarningKind::kGaze,        WarningKind::kKeyCut,         WarningKind::kLightCut,
                                WarningKind::kShadow,      WarningKind::kAmbient};

// A report whose face reads with a dome toward the camera, which tells what is sent back.
MeterReport domed_report() {
    MeterReport report = filled_report();
    report.readings.front().receptor = Receptor::kDome;
    report.readings.front().facing = Facing::kCamera;
    return report;
}

TEST(Surroundings, JsonHasEveryKey) {
    const Read json = Read::parse(report_json(domed_report()));
    EXPECT_EQ(keys_of(json["room"]),
              (Keys{"size_m", "face_share", "cheek_camera_left_share", "cheek_camera_right_share"}));
    EXPECT_EQ(keys_of(json["backdrop"]), (Keys{"places", "sends_back"}));
    EXPECT_EQ(
        keys_of(json["backdrop"]["places"][0]),
        (Keys{"place", "pixel", "meets", "hidden_by", "position_m", "exposure_lxs", "standard_error_lxs", "f_number",
              "f_number_marked", "f_number_meter", "stops_from_face", "linear", "stops_from_grey", "clipped"}));
    EXPECT_EQ(keys_of(json["backdrop"]["sends_back"][0]),
              (Keys{"point", "receptor", "facing", "exposure_lxs", "standard_error_lxs", "share", "stops_under"}));
    EXPECT_EQ(keys_of(json["warnings"][0]), (Keys{"id", "thing", "by", "number", "unit", "pixel_box", "words"}));
}

TEST(Surroundings, JsonHasTheValues) {
    const Read json = Read::parse(report_json(domed_report()));
    // 32 of 160 lx·s, and 10 of 160: four stops under.
    EXPECT_DOUBLE_EQ(json["meter"][0]["room_share"], 0.2);
    EXPECT_DOUBLE_EQ(json["meter"][0]["backdrop_share"], 0.0625);
    EXPECT_DOUBLE_EQ(json["room"]["face_share"], 0.2);
    EXPECT_EQ(json["room"]["size_m"], Read::parse("[4.0, 6.0, 2.7]"));
    EXPECT_DOUBLE_EQ(json["backdrop"]["sends_back"][0]["stops_under"], 4.0);
    EXPECT_EQ(json["backdrop"]["places"][0]["hidden_by"], "lips");
    EXPECT_EQ(json["backdrop"]["places"][0]["stops_from_grey"], 1.0);
    EXPECT_EQ(json["backdrop"]["places"][0]["clipped"], false);
    EXPECT_EQ(json["backdrop"]["places"][1]["clipped"], true);
    EXPECT_EQ(json["warnings"][0]["id"], "in-picture");
    EXPECT_EQ(json["warnings"][0]["number"], 2.25);
    EXPECT_EQ(json["warnings"][0]["unit"], "percent");
    EXPECT_EQ(json["warnings"][0]["pixel_box"], Read::parse("[600.0, 0.0, 640.0, 90.0]"));
    EXPECT_EQ(json["warnings"][1]["by"], "flag");
}

TEST(Surroundings, WhatDoesNotExistIsNull) {
    const Read json = Read::parse(report_json(empty_report()));
    EXPECT_TRUE(json["backdrop"].is_null());
    EXPECT_TRUE(json["room"].is_null());
    EXPECT_TRUE(json["warnings"].empty());
    EXPECT_TRUE(json["meter"][0]["room_share"].is_null());  // a share of nothing
    const Read full = Read::parse(report_json(filled_report()));
    EXPECT_TRUE(full["room"]["face_share"].is_null());  // not read that way
    EXPECT_TRUE(full["warnings"][0]["by"].is_null());
    EXPECT_TRUE(full["warnings"][1]["pixel_box"].is_null());
    for (const char* key : {"position_m", "exposure_lxs", "f_number", "stops_from_face", "linear", "clipped"}) {
        EXPECT_TRUE(full["backdrop"]["places"][2][key].is_null()) << key;
    }
    EXPECT_EQ(full["backdrop"]["places"][2]["meets"], "rim");
    EXPECT_TRUE(full["backdrop"]["places"][3]["meets"].is_null());
    const Read spoilt = Read::parse(report_json(spoilt_report()));
    EXPECT_TRUE(spoilt["backdrop"]["places"][0]["linear"].is_null());
    EXPECT_TRUE(spoilt["warnings"][0]["number"].is_null());
}

TEST(Surroundings, TextTellsOfTheBackdrop) {
    const std::string text = report_text(domed_report());
    for (const char* part : {"behind the sitter (lips)", "5.6 + 0/10", "rim, not the backdrop", "nothing there", "yes",
                             "6.2 %", "4.0", "What came from the room", "20.0 %"}) {
        EXPECT_TRUE(has(text, part)) << part << " is missing from\n" << text;
    }
    const std::string empty = report_text(empty_report());
    EXPECT_TRUE(has(empty, "\nBackdrop, the sitter in place\n  None.\n"));
    EXPECT_FALSE(has(empty, "What came from the room"));
}

// Ambient four stops under adds log2(1 + 2^-4) = 0.087 stop.
TEST(Surroundings, WarningsCarryTheirNumbers) {
    const std::string text = report_text(filled_report());
    for (const char* part : {"rim stands in the picture: 2 % of the frame, pixels 600 to 640 across and 0 to 90 down",
                             "key is cut from the face by flag: 12 %", "-4.0 stops", "0.09 stop"}) {
        EXPECT_TRUE(has(text, part)) << part << " is missing from\n" << text;
    }
    EXPECT_TRUE(has(report_text(empty_report()), "\nWarnings\n  None.\n"));
}

TEST(Surroundings, EveryKindHasAnIdOfItsOwnAndANumberInItsWords) {
    std::set<std::string> ids;
    for (const WarningKind kind : kEveryKind) {
        const Warning warning{kind, "octa", 37.0, -2.5, PixelBox{1.0, 2.0, 3.0, 4.0}, "board"};
        EXPECT_TRUE(ids.insert(warning_id(kind)).second) << warning_id(kind);
        EXPECT_FALSE(warning_unit(kind).empty());
        const std::string words = warning_words(warning);
        EXPECT_TRUE(has(words, "37")) << words;
        EXPECT_TRUE(words.starts_with("octa ")) << words;
        EXPECT_EQ(words.back(), '.') << words;
    }
}

// A share that is there is not printed as nothing; a shadow that takes half of the light is a stop deep.
TEST(Surroundings, SmallSharesAndShadowsInStops) {
    EXPECT_TRUE(has(warning_words({WarningKind::kInPicture, "rim", 0.01, {}, {}, ""}), "under 1 %"));
    EXPECT_TRUE(has(warning_words({WarningKind::kShadow, "key", 50.0, {}, {}, "backdrop"}),
                    "50 % of the light there, 1.0 stops"));
    EXPECT_FALSE(has(warning_words({WarningKind::kShadow, "key", 100.0, {}, {}, "backdrop"}), "stops"));
}

TEST(Surroundings, CautionsAreThoseThatApply) {
    MeterReport report = filled_report();  // a flash and a lamp, nothing overhead
    std::string text = report_text(report);
    EXPECT_TRUE(has(text, "Heat:"));
    EXPECT_TRUE(has(text, "before the day"));
    EXPECT_TRUE(has(text, "a weight on each"));
    EXPECT_TRUE(has(text, "licensed practice"));
    EXPECT_FALSE(has(text, "safety cord"));
    report.warnings.push_back({WarningKind::kOverhead, "boom", 80.0, {}, {}, ""});
    report.powers.pop_back();
    text = report_text(report);
    EXPECT_TRUE(has(text, "safety cord"));
    EXPECT_TRUE(has(text, "counterweight"));
    EXPECT_FALSE(has(text, "Heat:"));
    report.powers = {{"lamp", 2000.0, false, 0.0, 2.0}};
    EXPECT_FALSE(has(report_text(report), "before the day"));
}

TEST(Surroundings, ANameInTheWarningsCannotMoveTheCursor) {
    MeterReport report = filled_report();
    report.warnings.front().thing = "\x1B[5mrim\a";
    const std::string text = report_text(report);
    for (const char c : text) EXPECT_TRUE(c == '\n' || static_cast<unsigned char>(c) >= 0x20);
}

}  // namespace
}  // namespace understudy
