#include "report/report_json.h"

#include <cmath>

#include "report/face_json.h"
#include "report/json_parts.h"
#include "report/power_json.h"
#include "report/report_colour.h"
#include "report/surroundings_json.h"
#include "report/words.h"
#include "sitter/eye.h"

namespace understudy {
namespace {

constexpr int kClockMinutes = 5;
constexpr double kIrisRadiusMm = 1000.0 * kIrisRadius;

Json json_of(const LightReading& reading) {
    return {{"light", reading.light},
            {"exposure_lxs", number(reading.exposure_lxs)},
            {"standard_error_lxs", number(reading.standard_error_lxs)},
            {"f_number", positive(reading.f_number)},
            {"f_number_marked", lens_mark(reading.f_number)},
            {"f_number_meter", meter_mark(reading.f_number)}};
}

Json json_of(const Reading& reading) {
    return {{"point", reading.point},
            {"receptor", word(reading.receptor)},
            {"facing", word(reading.facing)},
            {"position_m", triple(reading.position_m)},
            {"normal", triple(reading.normal)},
            {"exposure_lxs", number(reading.exposure_lxs)},
            {"standard_error_lxs", number(reading.standard_error_lxs)},
            {"f_number", positive(reading.f_number)},
            {"f_number_marked", lens_mark(reading.f_number)},
            {"f_number_meter", meter_mark(reading.f_number)},
            {"stops_from_camera", number(reading.stops_from_camera)},
            {"room_share", room_share(reading)},
            {"backdrop_share", backdrop_share(reading)},
            {"by_light", list(reading.by_light, [](const LightReading& light) { return json_of(light); })}};
}

Json json_of(const Ratio& ratio) {
    return {{"key_to_fill", number(ratio.key_to_fill)},
            {"stops", number(ratio.stops)},
            {"lit_cheek", name_or_null(ratio.lit_cheek)},
            {"face_key_to_fill", number(ratio.face_key_to_fill)},
            {"face_key_and_fill_to_fill", number(ratio.face_key_and_fill_to_fill)},
            {"face_key_to_fill_stops", number(std::log2(ratio.face_key_to_fill))},
            {"face_key_and_fill_to_fill_stops", number(std::log2(ratio.face_key_and_fill_to_fill))},
            {"cheeks_measured_at", "cheek-camera-left and cheek-camera-right, flat, facing surface, all lights on"},
            {"face_measured_at", "face, dome, facing camera, the sitter away"}};
}

Json json_of(const Catchlight& catchlight) {
    const bool has_clock = std::isfinite(catchlight.clock_deg);
    return {{"eye", catchlight.eye},
            {"light", catchlight.light},
            {"is_panel", catchlight.is_panel},
            {"clock", has_clock ? Json(clock_time(catchlight.clock_deg, kClockMinutes)) : Json(nullptr)},
            {"clock_deg", number(catchlight.clock_deg)},
            {"offset_in_iris", pair(catchlight.offset_in_iris)},
            {"pixel", pair(catchlight.pixel)},
            {"width_in_iris", number(catchlight.width_in_iris)},
            {"height_in_iris", number(catchlight.height_in_iris)},
            {"visible", number(catchlight.visible)},
            {"hidden_by", name_or_null(catchlight.hidden_by)},
            {"hidden", taken_json(catchlight.hidden)},
            {"width_mm", number(catchlight.width_in_iris * kIrisRadiusMm)},
            {"height_mm", number(catchlight.height_in_iris * kIrisRadiusMm)},
            {"stops_over_iris", number(catchlight.stops_over_iris)}};
}

Json json_of(const EyeReading& eye) {
    return {{"eye", eye.eye},
            {"exposure_lxs", number(eye.exposure_lxs)},
            {"standard_error_lxs", number(eye.standard_error_lxs)},
            {"stops_from_cheek", number(eye.stops_from_cheek)},
            {"verdict", word(eye.verdict)},
            {"lights", list(eye.lights, eye_light_json)},
            {"cornea_centre_m", triple(eye.cornea_centre_m)},
            {"cornea_radius_m", kCorneaRadius},
            {"iris_centre_m", triple(eye.iris_centre_m)},
            {"iris_radius_m", kIrisRadius},
            {"axis", triple(eye.axis)}};
}

template <class Item>
Json list_or_null(const std::optional<std::vector<Item>>& items) {
    return items ? list(*items, [](const Item& item) { return json_of(item); }) : Json(nullptr);
}

Json json_of(const MeterReport& report) {
    Json json;
    json["title"] = report.title;
    json["camera"] = {{"position_m", triple(report.camera_position_m)}, {"aim_m", triple(report.camera_aim_m)}};
    json["exposure"] = {{"aperture", number(report.aperture)},
                        {"shutter_s", number(report.shutter_s)},
                        {"iso", number(report.iso)},
                        {"ev100", number(report.ev100)},
                        {"aperture_marked", lens_mark(report.aperture)}};
    json["powers"] = list(report.powers, [](const LightPower& power) { return power_json(power); });
    json["colours"] = colours_json(report.colours);
    json["meter"] = list(report.readings, [](const Reading& reading) { return json_of(reading); });
    json["ratio"] = report.ratio ? json_of(*report.ratio) : Json(nullptr);
    json["ambient"] = {{"exposure_lxs", number(report.ambient_lxs)},
                       {"stops_from_camera", number(report.ambient_stops_from_camera)}};
    json["room"] = room_json(report);
    json["backdrop"] = backdrop_json(report);
    json["outline"] = outline_json(report);
    json["catchlights"] = list_or_null(report.catchlights);
    json["eyes"] = list_or_null(report.eyes);
    json["face"] = report.face ? face_json(*report.face) : Json(nullptr);
    json["pupil"] = report.pupil ? pupil_json(*report.pupil) : Json(nullptr);
    json["warnings"] = warnings_json(report);
    return json;
}

}  // namespace

std::string report_json(const MeterReport& report) {
    // Names come from a scene file; a byte in one that is not UTF-8 is replaced and does not end the program.
    return json_of(report).dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

}  // namespace understudy
