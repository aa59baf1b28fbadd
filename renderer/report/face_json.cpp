#include "report/face_json.h"

#include "report/json_parts.h"
#include "report/words.h"

namespace understudy {
namespace {

Json nose_json(const NoseShadow& nose) {
    return {{"area_m2", number(nose.area_m2)},
            {"length_m", number(nose.length_m)},
            {"from_down_deg", number(nose.from_down_deg)},
            {"to_lip", number(nose.to_lip)},
            {"closed", nose.closed}};
}

Json triangle_json(const CheekTriangle& triangle) {
    return {{"area_m2", number(triangle.area_m2)},
            {"width_m", number(triangle.width_m)},
            {"length_m", number(triangle.length_m)},
            {"width_of_eye", number(triangle.of_eye_width)},
            {"length_of_nose", number(triangle.of_nose_length)}};
}

Json pattern_json(const PatternReading& pattern) {
    return {{"name", word(pattern.pattern)},
            {"side", word(pattern.side)},
            {"key_across_deg", number(pattern.across_deg)},
            {"key_up_deg", number(pattern.up_deg)},
            {"near_cheek_lit", number(pattern.near_cheek_lit)},
            {"far_cheek_lit", number(pattern.far_cheek_lit)},
            {"nose_shadow", pattern.nose ? nose_json(*pattern.nose) : Json(nullptr)},
            {"triangle", pattern.triangle ? triangle_json(*pattern.triangle) : Json(nullptr)}};
}

Json next_json(const NextPattern& next) {
    const bool swung = next.swing_deg != 0.0;
    return {{"name", word(next.pattern)},
            {"swing_deg", swung ? number(next.swing_deg) : Json(nullptr)},
            {"raise_m", swung ? Json(nullptr) : number(next.raise_m)}};
}

Json highlight_json(const ForeheadHighlight& highlight) {
    return {{"peak_stops", number(highlight.peak_stops)}, {"area_m2", number(highlight.area_m2)}};
}

Json fall_off_json(const KeyFallOff& fall_off) {
    return {{"width_over_distance", number(fall_off.width_over_distance)},
            {"height_over_distance", number(fall_off.height_over_distance)},
            {"across_face_stops", number(fall_off.across_face_stops)},
            {"to_chest_stops", number(fall_off.to_chest_stops)},
            {"nearer_m", number(fall_off.nearer_m)},
            {"farther_m", number(fall_off.farther_m)}};
}

}  // namespace

Json face_json(const FaceReading& face) {
    return {
        {"pattern", face.pattern ? pattern_json(*face.pattern) : Json(nullptr)},
        {"next", list(face.next, next_json)},
        {"clamshell_with", name_or_null(face.clamshell_with)},
        {"nose_edge_m", face.nose_edge_m ? number(*face.nose_edge_m) : Json(nullptr)},
        {"forehead_highlight", face.highlight ? highlight_json(*face.highlight) : Json(nullptr)},
        {"fill_shadows",
         list(face.fill_shadows,
              [](const FillShadow& shadow) {
                  return Json{{"light", shadow.light}, {"stops", number(shadow.stops)}, {"visible", shadow.visible}};
              })},
        {"key", fall_off_json(face.fall_off)}};
}

Json taken_json(const std::vector<Taken>& taken) {
    return list(taken, [](const Taken& one) { return Json{{"by", one.by}, {"share", number(one.share)}}; });
}

Json eye_light_json(const EyeLight& light) {
    return {{"light", light.light},
            {"seen", number(light.sight.share)},
            {"in_the_way", taken_json(light.sight.taken)},
            {"exposure_lxs", number(light.exposure_lxs)},
            {"stops_from_cheek", number(light.stops_from_cheek)},
            {"fault", light.fault == EyeFault::kNone ? Json(nullptr) : Json(word(light.fault))}};
}

}  // namespace understudy
