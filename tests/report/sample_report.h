// Two reports for the tests: one with everything in it, one of an empty studio.
#pragma once

#include <cmath>
#include <limits>

#include "meter/reading.h"

namespace understudy {

// An army training text's worked example (US Army Subcourse SS0510, "Introduction to Portrait Photography", 1994):
// equal flashes, the main light at 8 ft and the fill at 11 ft, which it calls 3:1.
inline Ratio army_ratio() {
    const double key_to_fill = (11.0 / 8.0) * (11.0 / 8.0);
    return {key_to_fill + 1.0, std::log2(key_to_fill + 1.0), "camera-left", key_to_fill, key_to_fill + 1.0};
}

inline Reading sample_reading() {
    Reading reading;
    reading.point = "face";
    reading.facing = Facing::kKey;
    reading.position_m = {0.0, 1.25, 0.1};
    reading.exposure_lxs = 160.0;  // f/8 at ISO 100 with C = 250 lx·s
    reading.standard_error_lxs = 1.6;
    reading.f_number = 8.0;
    reading.stops_from_camera = 2.0;
    reading.by_room_lxs = 32.0;      // a fifth
    reading.by_backdrop_lxs = 10.0;  // a sixteenth: four stops under
    reading.by_backdrop_error_lxs = 0.2;
    reading.by_light = {{"key", 120.0, 1.2, 6.9282}, {"a fill with a very long name", 40.0, 1.0, 4.0}};
    return reading;
}

inline Catchlight sample_catchlight() {
    Catchlight catchlight;
    catchlight.eye = "camera-left";
    catchlight.light = "key";
    catchlight.clock_deg = 300.0;
    catchlight.offset_in_iris = {-0.375F, 0.5F};  // 0.625 from the middle
    catchlight.pixel = {231.5F, 300.25F};
    catchlight.width_in_iris = 0.5;
    catchlight.height_in_iris = 1.0;
    catchlight.visible = 0.75;
    catchlight.hidden_by = "upper lid";
    catchlight.hidden = {{"upper lid", 0.25}};
    catchlight.stops_over_iris = 4.5;
    return catchlight;
}

inline FaceReading sample_face() {
    FaceReading face;
    face.pattern = PatternReading{};
    face.pattern->pattern = LightPattern::kLoop;
    face.pattern->side = LitSide::kShort;
    face.pattern->across_deg = -40.0;
    face.pattern->up_deg = 25.0;
    face.pattern->near_cheek_lit = 1.0;
    face.pattern->far_cheek_lit = 0.5;
    face.pattern->nose = NoseShadow{150e-6, 0.03, 45.0, 0.5, false};
    face.next = {{LightPattern::kRembrandt, -12.0, 0.0}};
    face.nose_edge_m = 0.008;
    face.highlight = ForeheadHighlight{0.5, 10e-4};
    face.fill_shadows = {{"fill", 0.25, true}};
    face.fall_off = {0.5, 0.75, 0.25, 0.5, 0.15, 0.17};
    return face;
}

// 1.5 stops more than 42.4 J at full, and one way to have them.
inline LightPower sample_flash() {
    LightPower flash{"key", 4800.0, true, 120.0, 8.0};
    flash.efficacy_lms_per_j = 40.0;
    flash.dial = DialReading{"small", "1/1", "1/256 to 1/1", 0.0, 1.5, 1.5, {}};
    flash.dial->ways_out = {{Remedy::Kind::kDistance, 0.75, 1.5, true, 0.25, 0.5, 2.0}};
    flash.modelling_stops = -6.5;
    return flash;
}

// A backdrop a stop under the face on the left, hidden from view in the middle, and a light where the right side was.
inline std::vector<BackdropPlace> sample_backdrop() {
    BackdropTone tone;
    tone.position_m = {-0.5, 1.6, -1.5};
    tone.exposure_lxs = 80.0;
    tone.standard_error_lxs = 0.4;
    tone.f_number = 5.6568542;
    tone.stops_from_face = -1.0;
    tone.linear = 0.36;
    tone.stops_from_grey = 1.0;
    BackdropTone bright = tone;
    bright.linear = 1.44;
    bright.stops_from_grey = 3.0;
    bright.clipped = true;
    return {{"centre", {320.0F, 400.0F}, "backdrop", "lips", tone},
            {"top-left", {0.5F, 0.5F}, "backdrop", "", bright},
            {"top-right", {639.5F, 0.5F}, "rim", "", std::nullopt},
            {"bottom-left", {0.5F, 799.5F}, "", "", std::nullopt}};
}

inline std::vector<Warning> sample_warnings() {
    return {{WarningKind::kInPicture, "rim", 2.25, {}, PixelBox{600.0, 0.0, 640.0, 90.0}, ""},
            {WarningKind::kKeyCut, "key", 12.5, {}, {}, "flag"},
            {WarningKind::kAmbient, "ambient", -4.0, std::log2(1.0 + std::exp2(-4.0)), {}, ""}};
}

inline MeterReport filled_report() {
    MeterReport report;
    report.title = "Side strip";
    report.camera_position_m = {0.0, 1.25, 2.3};
    report.camera_aim_m = {0.0, 1.25, 0.1};
    report.aperture = 4.0;
    report.shutter_s = 1.0 / 200.0;
    report.iso = 100.0;
    report.ev100 = std::log2(16.0 * 200.0);
    report.powers = {sample_flash(), {"lamp", 2000.0, false, 0.0, 2.0}};
    report.colours = {{"key", {"half-warm"}, 0.56, 0.3886, 0.3893, 3819.0, 0.004}};
    report.readings = {sample_reading()};
    report.ratio = army_ratio();
    report.ambient_lxs = 1.25;
    report.ambient_stops_from_camera = -5.0;
    report.backdrop = sample_backdrop();
    report.room_size_m = Double3(4.0, 6.0, 2.7);
    report.warnings = sample_warnings();
    report.catchlights = {{sample_catchlight()}};
    EyeReading lit;
    lit.eye = "camera-left";
    lit.exposure_lxs = 100.0;
    lit.standard_error_lxs = 1.0;
    lit.stops_from_cheek = -0.5;
    lit.verdict = EyeVerdict::kLit;
    EyeLight key;
    key.light = "key";
    key.sight = {0.75, {{"brow", 0.25}}};
    key.exposure_lxs = 80.0;
    key.stops_from_cheek = -0.5;
    key.fault = EyeFault::kNoReflection;
    lit.lights = {key};
    EyeReading dark;
    dark.eye = "camera-right";
    dark.exposure_lxs = 5.0;
    dark.standard_error_lxs = 0.5;
    dark.stops_from_cheek = -4.25;
    report.eyes = {{lit, dark}};
    report.face = sample_face();
    report.pupil = PupilReading{3.25, 126.0, PupilFrom::kStandingLight};
    return report;
}

// head = "none", lights switched off: what does not exist must not look like a number.
inline MeterReport empty_report() {
    MeterReport report;
    report.title = "Empty";
    Reading dark;
    dark.point = "face";
    dark.stops_from_camera = -std::numeric_limits<double>::infinity();
    report.readings = {dark};
    report.ambient_stops_from_camera = -std::numeric_limits<double>::infinity();
    return report;
}

// The same report with a quantity of every kind spoilt.
inline MeterReport spoilt_report() {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double infinity = std::numeric_limits<double>::infinity();
    MeterReport report = filled_report();
    report.camera_position_m.x = nan;
    report.ev100 = infinity;
    report.powers[0].lumens = nan;
    report.powers[0].energy_j = infinity;
    report.powers[1].f_number = nan;
    report.readings[0].exposure_lxs = nan;
    report.readings[0].f_number = infinity;
    report.readings[0].by_backdrop_lxs = infinity;
    report.backdrop->front().tone->linear = nan;
    report.backdrop->front().tone->stops_from_grey = infinity;
    report.warnings.front().number = nan;
    report.warnings.back().also = infinity;
    report.readings[0].stops_from_camera = nan;
    report.readings[0].by_light[0].standard_error_lxs = infinity;
    report.ratio->key_to_fill = infinity;
    report.ratio->face_key_and_fill_to_fill = nan;
    report.ratio->stops = infinity;
    report.ambient_lxs = nan;
    report.ambient_stops_from_camera = infinity;
    report.catchlights->front().clock_deg = nan;
    report.catchlights->front().offset_in_iris.x = std::numeric_limits<float>::quiet_NaN();
    report.catchlights->front().width_in_iris = infinity;
    report.eyes->front().stops_from_cheek = nan;
    report.eyes->front().exposure_lxs = infinity;
    return report;
}

}  // namespace understudy
