#include "report/report_json.h"

#include <string>
#include <vector>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "report/sample_report.h"

namespace understudy {
namespace {

using Json = nlohmann::ordered_json;

std::vector<std::string> keys_of(const Json& json) {
    std::vector<std::string> keys;
    for (const auto& item : json.items()) keys.push_back(item.key());
    return keys;
}

using Keys = std::vector<std::string>;

TEST(ReportJson, HasEveryKeyInOrder) {
    const Json json = Json::parse(report_json(filled_report()));
    EXPECT_EQ(keys_of(json), (Keys{"title", "camera", "exposure", "powers", "colours", "meter", "ratio", "ambient",
                                   "room", "backdrop", "outline", "catchlights", "eyes", "face", "pupil", "warnings"}));
    EXPECT_EQ(keys_of(json["camera"]), (Keys{"position_m", "aim_m"}));
    EXPECT_EQ(keys_of(json["exposure"]), (Keys{"aperture", "shutter_s", "iso", "ev100", "aperture_marked"}));
    EXPECT_EQ(
        keys_of(json["powers"][0]),
        (Keys{"light", "source", "lumen_seconds", "lumens", "energy_j", "f_number", "f_number_marked", "f_number_meter",
              "efficacy_lms_per_j", "efficacy_from", "modifier_efficiency", "lux", "dial", "modelling_lamp_stops"}));
    EXPECT_EQ(keys_of(json["powers"][0]["dial"]),
              (Keys{"head", "setting", "range", "stops_from_full", "left_over_stops", "out_by_stops", "ways_out"}));
    EXPECT_EQ(keys_of(json["powers"][0]["dial"]["ways_out"][0]),
              (Keys{"way", "value", "stops", "enough", "looks_as_large", "fall_off_before_stops",
                    "fall_off_after_stops", "what", "side_effect"}));
    EXPECT_EQ(keys_of(json["pupil"]), (Keys{"diameter_mm", "from", "illuminance_lx"}));
    EXPECT_EQ(keys_of(json["colours"][0]),
              (Keys{"light", "gels", "gel_loss_stops", "colour_temperature_k", "duv", "x", "y"}));
    EXPECT_EQ(keys_of(json["meter"][0]), (Keys{"point", "receptor", "facing", "position_m", "normal", "exposure_lxs",
                                               "standard_error_lxs", "f_number", "f_number_marked", "f_number_meter",
                                               "stops_from_camera", "room_share", "backdrop_share", "by_light"}));
    EXPECT_EQ(keys_of(json["meter"][0]["by_light"][0]),
              (Keys{"light", "exposure_lxs", "standard_error_lxs", "f_number", "f_number_marked", "f_number_meter"}));
    EXPECT_EQ(
        keys_of(json["ratio"]),
        (Keys{"key_to_fill", "stops", "lit_cheek", "face_key_to_fill", "face_key_and_fill_to_fill",
              "face_key_to_fill_stops", "face_key_and_fill_to_fill_stops", "cheeks_measured_at", "face_measured_at"}));
    EXPECT_EQ(keys_of(json["ambient"]), (Keys{"exposure_lxs", "stops_from_camera"}));
    EXPECT_EQ(keys_of(json["catchlights"][0]),
              (Keys{"eye", "light", "is_panel", "clock", "clock_deg", "offset_in_iris", "pixel", "width_in_iris",
                    "height_in_iris", "visible", "hidden_by", "hidden", "width_mm", "height_mm", "stops_over_iris"}));
    EXPECT_EQ(keys_of(json["eyes"][0]),
              (Keys{"eye", "exposure_lxs", "standard_error_lxs", "stops_from_cheek", "verdict", "lights",
                    "cornea_centre_m", "cornea_radius_m", "iris_centre_m", "iris_radius_m", "axis"}));
    EXPECT_EQ(keys_of(json["eyes"][0]["lights"][0]),
              (Keys{"light", "seen", "in_the_way", "exposure_lxs", "stops_from_cheek", "fault"}));
    EXPECT_EQ(keys_of(json["face"]),
              (Keys{"pattern", "next", "clamshell_with", "nose_edge_m", "forehead_highlight", "fill_shadows", "key"}));
    EXPECT_EQ(keys_of(json["face"]["pattern"]), (Keys{"name", "side", "key_across_deg", "key_up_deg", "near_cheek_lit",
                                                      "far_cheek_lit", "nose_shadow", "triangle"}));
    EXPECT_EQ(keys_of(json["face"]["key"]), (Keys{"width_over_distance", "height_over_distance", "across_face_stops",
                                                  "to_chest_stops", "nearer_m", "farther_m"}));
}

TEST(ReportJson, HasTheReportsValues) {
    const Json json = Json::parse(report_json(filled_report()));
    EXPECT_EQ(json["camera"]["position_m"], Json::parse("[0.0, 1.25, 2.3]"));
    EXPECT_EQ(json["meter"][0]["receptor"], "flat");
    EXPECT_EQ(json["meter"][0]["facing"], "key");
    EXPECT_EQ(json["meter"][0]["by_light"][1]["light"], "a fill with a very long name");
    EXPECT_EQ(json["catchlights"][0]["clock"], "10:00");
    EXPECT_EQ(json["catchlights"][0]["clock_deg"], 300.0);
    EXPECT_EQ(json["catchlights"][0]["offset_in_iris"], Json::parse("[-0.375, 0.5]"));
    EXPECT_EQ(json["catchlights"][0]["hidden_by"], "upper lid");
    EXPECT_EQ(json["catchlights"][0]["hidden"][0]["by"], "upper lid");
    EXPECT_NEAR(json["catchlights"][0]["width_mm"], 0.5 * 5.9, 1e-9);
    EXPECT_EQ(json["eyes"][0]["lights"][0]["in_the_way"][0]["by"], "brow");
    EXPECT_EQ(json["eyes"][0]["lights"][0]["fault"], "no reflection");
    EXPECT_EQ(json["face"]["pattern"]["name"], "loop");
    EXPECT_EQ(json["face"]["pattern"]["side"], "short");
    EXPECT_EQ(json["face"]["next"][0]["swing_deg"], -12.0);
    EXPECT_TRUE(json["face"]["next"][0]["raise_m"].is_null());
    EXPECT_EQ(json["eyes"][0]["verdict"], "lit");
    EXPECT_EQ(json["eyes"][1]["verdict"], "dark");
    // Schematic eyes (Gullstrand, Le Grand): corneal radius 7.8 mm. Iris: half of 11.71 ± 0.42 mm (Rüfer and others
    // 2005).
    EXPECT_DOUBLE_EQ(json["eyes"][0]["cornea_radius_m"], 0.0078);
    EXPECT_NEAR(json["eyes"][0]["iris_radius_m"], 0.01171 / 2.0, 0.00042 / 2.0);
}

// US Army Subcourse SS0510 (1994): flashes at 8 ft and 11 ft are "3:1", counted key and fill to fill.
TEST(ReportJson, BothRatios) {
    const Json ratio = Json::parse(report_json(filled_report()))["ratio"];
    EXPECT_NEAR(ratio["face_key_and_fill_to_fill"], 2.8906, 5e-5);
    EXPECT_NEAR(ratio["face_key_to_fill"], 1.8906, 5e-5);
    EXPECT_EQ(ratio["lit_cheek"], "camera-left");
}

TEST(ReportJson, AFlashHasNoLumensAndALampNoEnergy) {
    const Json powers = Json::parse(report_json(filled_report()))["powers"];
    EXPECT_EQ(powers[0]["lumen_seconds"], 4800.0);
    EXPECT_EQ(powers[0]["energy_j"], 120.0);
    EXPECT_TRUE(powers[0]["lumens"].is_null());
    EXPECT_EQ(powers[1]["lumens"], 2000.0);
    EXPECT_TRUE(powers[1]["lumen_seconds"].is_null());
    EXPECT_TRUE(powers[1]["energy_j"].is_null());
}

TEST(ReportJson, WhatDoesNotExistIsNull) {
    const Json json = Json::parse(report_json(empty_report()));
    EXPECT_TRUE(json["ratio"].is_null());
    EXPECT_TRUE(json["catchlights"].is_null());
    EXPECT_TRUE(json["eyes"].is_null());
    EXPECT_EQ(json["powers"], Json::array());
    EXPECT_TRUE(json["meter"][0]["f_number"].is_null());
    EXPECT_TRUE(json["meter"][0]["stops_from_camera"].is_null());
    EXPECT_TRUE(json["ambient"]["stops_from_camera"].is_null());
    EXPECT_EQ(json["meter"][0]["exposure_lxs"], 0.0);  // darkness is measured: nothing is what falls there
    EXPECT_EQ(json["ambient"]["exposure_lxs"], 0.0);
}

TEST(ReportJson, EyesWithoutCatchlightsHaveAnEmptyList) {
    MeterReport report = filled_report();
    report.catchlights->clear();
    EXPECT_EQ(Json::parse(report_json(report))["catchlights"], Json::array());
}

TEST(ReportJson, NothingHidesAWholeCatchlight) {
    MeterReport report = filled_report();
    report.catchlights->front().hidden_by.clear();
    EXPECT_TRUE(Json::parse(report_json(report))["catchlights"][0]["hidden_by"].is_null());
}

TEST(ReportJson, WhatIsNotFiniteIsNull) {
    const std::string text = report_json(spoilt_report());
    const Json json = Json::parse(text);
    EXPECT_TRUE(json["camera"]["position_m"][0].is_null());
    EXPECT_TRUE(json["exposure"]["ev100"].is_null());
    EXPECT_TRUE(json["powers"][0]["lumen_seconds"].is_null());
    EXPECT_TRUE(json["powers"][0]["energy_j"].is_null());
    EXPECT_TRUE(json["powers"][1]["f_number"].is_null());
    EXPECT_TRUE(json["meter"][0]["exposure_lxs"].is_null());
    EXPECT_TRUE(json["meter"][0]["f_number"].is_null());
    EXPECT_TRUE(json["meter"][0]["by_light"][0]["standard_error_lxs"].is_null());
    EXPECT_TRUE(json["ratio"]["key_to_fill"].is_null());
    EXPECT_TRUE(json["ratio"]["face_key_and_fill_to_fill"].is_null());
    EXPECT_TRUE(json["ambient"]["exposure_lxs"].is_null());
    EXPECT_TRUE(json["catchlights"][0]["clock"].is_null());
    EXPECT_TRUE(json["catchlights"][0]["clock_deg"].is_null());
    EXPECT_TRUE(json["catchlights"][0]["offset_in_iris"][0].is_null());
    EXPECT_TRUE(json["eyes"][0]["exposure_lxs"].is_null());
}

TEST(ReportJson, ANameInABrokenEncodingStillGivesAFile) {
    MeterReport report = filled_report();
    report.title = "caf\xE9 \"quoted\"";
    EXPECT_EQ(Json::parse(report_json(report))["title"], "caf\xEF\xBF\xBD \"quoted\"");
}

}  // namespace
}  // namespace understudy
