#include "report/surroundings_json.h"

#include "report/sent_back.h"
#include "report/warning_words.h"
#include "report/words.h"

namespace understudy {
namespace {

// What a place has only where the backdrop is: all null elsewhere.
Json json_of(const BackdropPlace& place) {
    const auto only = [&](const auto& to_json) { return place.tone ? to_json(*place.tone) : Json(nullptr); };
    return {{"place", place.place},
            {"pixel", pair(place.pixel)},
            {"meets", name_or_null(place.meets)},
            {"hidden_by", name_or_null(place.hidden_by)},
            {"position_m", only([](const BackdropTone& tone) { return triple(tone.position_m); })},
            {"exposure_lxs", only([](const BackdropTone& tone) { return number(tone.exposure_lxs); })},
            {"standard_error_lxs", only([](const BackdropTone& tone) { return number(tone.standard_error_lxs); })},
            {"f_number", only([](const BackdropTone& tone) { return positive(tone.f_number); })},
            {"f_number_marked", only([](const BackdropTone& tone) { return lens_mark(tone.f_number); })},
            {"f_number_meter", only([](const BackdropTone& tone) { return meter_mark(tone.f_number); })},
            {"stops_from_face", only([](const BackdropTone& tone) { return number(tone.stops_from_face); })},
            {"linear", only([](const BackdropTone& tone) { return number(tone.linear); })},
            {"stops_from_grey", only([](const BackdropTone& tone) { return number(tone.stops_from_grey); })},
            {"clipped", only([](const BackdropTone& tone) { return Json(tone.clipped); })}};
}

Json sent_back(const Reading& reading) {
    const double share = reading.by_backdrop_lxs / reading.exposure_lxs;
    return {{"point", reading.point},
            {"receptor", word(reading.receptor)},
            {"facing", word(reading.facing)},
            {"exposure_lxs", number(reading.by_backdrop_lxs)},
            {"standard_error_lxs", number(reading.by_backdrop_error_lxs)},
            {"share", number(share)},
            {"stops_under", number(-std::log2(share))}};
}

Json json_of(const Warning& warning) {
    const auto box_json = [](const PixelBox& box) {
        return Json::array({number(box.left), number(box.top), number(box.right), number(box.bottom)});
    };
    return {{"id", warning_id(warning.kind)},     {"thing", warning.thing},
            {"by", name_or_null(warning.by)},     {"number", number(warning.number)},
            {"unit", warning_unit(warning.kind)}, {"pixel_box", warning.box ? box_json(*warning.box) : Json(nullptr)},
            {"words", warning_words(warning)}};
}

Json share_at(const MeterReport& report, const char* point, Receptor receptor, Facing facing) {
    for (const Reading& reading : report.readings) {
        if (reading.point == point && reading.receptor == receptor && reading.facing == facing) {
            return room_share(reading);
        }
    }
    return nullptr;
}

}  // namespace

Json backdrop_json(const MeterReport& report) {
    if (!report.backdrop) return nullptr;
    Json back = Json::array();
    for (const Reading& reading : report.readings) {
        if (tells_what_is_sent_back(reading)) back.push_back(sent_back(reading));
    }
    return {{"places", list(*report.backdrop, [](const BackdropPlace& place) { return json_of(place); })},
            {"sends_back", back}};
}

Json outline_json(const MeterReport& report) {
    if (!report.outline) return nullptr;
    const auto one = [](const OutlinePlace& place) -> Json {
        return {{"clock", clock_time(place.clock_deg, 5)},
                {"clock_deg", number(place.clock_deg)},
                {"pixel", pair(place.pixel)},
                {"edge_linear", number(place.edge)},
                {"beyond_linear", number(place.beyond)},
                {"stops", number(place.stops)}};
    };
    return {{"median_stops", number(report.outline->median_stops)},
            {"weakest", one(report.outline->weakest)},
            {"places", list(report.outline->places, one)}};
}

Json room_json(const MeterReport& report) {
    if (!report.room_size_m && !(report.ambient_lxs > 0.0)) return nullptr;
    return {{"size_m", report.room_size_m ? triple(*report.room_size_m) : Json(nullptr)},
            {"face_share", share_at(report, "face", Receptor::kDome, Facing::kCamera)},
            {"cheek_camera_left_share", share_at(report, "cheek-camera-left", Receptor::kFlat, Facing::kSurface)},
            {"cheek_camera_right_share", share_at(report, "cheek-camera-right", Receptor::kFlat, Facing::kSurface)}};
}

Json warnings_json(const MeterReport& report) {
    return list(report.warnings, [](const Warning& warning) { return json_of(warning); });
}

Json room_share(const Reading& reading) { return number(reading.by_room_lxs / reading.exposure_lxs); }

Json backdrop_share(const Reading& reading) { return number(reading.by_backdrop_lxs / reading.exposure_lxs); }

}  // namespace understudy
