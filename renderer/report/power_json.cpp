#include "report/power_json.h"

#include "report/ways_out_text.h"
#include "report/words.h"

namespace understudy {
namespace {

Json way_json(const Remedy& way) {
    const bool by_distance = way.kind == Remedy::Kind::kDistance;
    return {{"way", word(way.kind)},
            {"value", positive(way.value)},
            {"stops", number(way.stops)},
            {"enough", way.enough},
            {"looks_as_large", by_distance ? number(way.looks_as_large) : Json(nullptr)},
            {"fall_off_before_stops", by_distance ? number(way.fall_off_before) : Json(nullptr)},
            {"fall_off_after_stops", by_distance ? number(way.fall_off_after) : Json(nullptr)},
            {"what", way_text(way)},
            {"side_effect", side_effect_text(way)}};
}

Json dial_json(const DialReading& dial) {
    Json ways = Json::array();
    for (const Remedy& way : dial.ways_out) ways.push_back(way_json(way));
    const bool out = dial.out_by_stops != 0.0;
    return {{"head", dial.head},
            {"setting", out ? Json(nullptr) : Json(dial.setting)},
            {"range", dial.range},
            {"stops_from_full", number(dial.stops_from_full)},
            {"left_over_stops", number(dial.left_over_stops)},
            {"out_by_stops", out ? number(dial.out_by_stops) : Json(nullptr)},
            {"ways_out", ways}};
}

}  // namespace

// A flash gives an amount of light, a lamp a flow of it: each has its own keys and the other's are null.
Json power_json(const LightPower& power) {
    const Json amount = number(power.lumens);
    const Json none = nullptr;
    return {{"light", power.light},
            {"source", power.flash ? "flash" : "continuous"},
            {"lumen_seconds", power.flash ? amount : none},
            {"lumens", power.flash ? none : amount},
            {"energy_j", power.flash ? positive(power.energy_j) : none},
            {"f_number", positive(power.f_number)},
            {"f_number_marked", lens_mark(power.f_number)},
            {"f_number_meter", meter_mark(power.f_number)},
            {"efficacy_lms_per_j", power.flash ? positive(power.efficacy_lms_per_j) : none},
            {"efficacy_from", power.flash ? Json(word(power.efficacy_from)) : none},
            {"modifier_efficiency", number(power.modifier_efficiency)},
            {"lux", power.flash ? none : positive(power.lux)},
            {"dial", power.dial ? dial_json(*power.dial) : none},
            {"modelling_lamp_stops", power.modelling_stops ? number(*power.modelling_stops) : none}};
}

Json pupil_json(const PupilReading& pupil) {
    return {{"diameter_mm", number(pupil.diameter_mm)},
            {"from", word(pupil.from)},
            {"illuminance_lx", number(pupil.illuminance_lx)}};
}

}  // namespace understudy
