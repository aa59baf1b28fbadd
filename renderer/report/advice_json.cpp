#include "report/advice_json.h"

#include <cmath>

#include "report/advice_text.h"
#include "report/table.h"
#include "report/words.h"

namespace understudy {
namespace {

const char* name_of(FixKind kind) {
    switch (kind) {
        case FixKind::kGaze:
            return "gaze_deg";
        case FixKind::kChin:
            return "chin_deg";
        case FixKind::kTurn:
            return "turn_deg";
        case FixKind::kStepBack:
            return "step_back_m";
        case FixKind::kStepAside:
            return "step_aside_m";
        case FixKind::kPower:
            return "power_stops";
        case FixKind::kReflector:
            return "reflector_distance_m";
        case FixKind::kHeight:
            return "height_m";
        case FixKind::kArc:
            return "height_along_arc_m";
        case FixKind::kAngle:
            return "angle_deg";
        case FixKind::kDistance:
            return "distance_m";
        case FixKind::kModifier:
            break;
    }
    return "modifier_times_as_wide";
}

Json eye_json(const EyeState& eye) {
    return {{"alive", eye.alive()},
            {"verdict", word(eye.verdict)},
            {"stops_from_cheek", number(eye.stops_from_cheek)},
            {"catchlight_of", name_or_null(eye.catchlight)},
            {"clock_deg", eye.catchlight.empty() ? Json(nullptr) : number(eye.clock_deg)},
            {"catchlight_shown", number(eye.shown)}};
}

Json look_json(const SetupLook& look) {
    return {{"eyes", {{"camera_left", eye_json(look.eyes.eyes[0])}, {"camera_right", eye_json(look.eyes.eyes[1])}}},
            {"pattern", look.pattern ? Json(word(*look.pattern)) : Json(nullptr)},
            {"nose_edge_m", look.nose_edge_m ? number(*look.nose_edge_m) : Json(nullptr)},
            {"ratio_stops", look.eyes.ratio ? number(look.eyes.ratio->stops) : Json(nullptr)},
            {"face_lxs", number(look.eyes.face_lxs)}};
}

Json fix_json(const Fix& fix, const std::string& key) {
    Json faces = Json::object();
    for (const OnFace& on : fix.faces) {
        faces[on.face] = {{"enough", on.enough}, {"number", on.number ? number(*on.number) : Json(nullptr)}};
    }
    return {{"instruction", instruction(fix, key)},
            {"kind", name_of(fix.kind)},
            {"number", number(fix.number)},
            {"thing", name_or_null(fix.thing)},
            {"then", look_json(fix.look)},
            {"other_faces", faces},
            {"changes", fix.changes},
            {"new_table", name_or_null(fix.table)}};
}

Json cut_json(const CutOff& cut) {
    return {{"ever_alive", cut.ever_alive}, {"lost_at", cut.at ? number(*cut.at) : Json(nullptr)}};
}

Json eyes_json(const std::array<CutOff, 2>& cuts) {
    return {{"camera_left", cut_json(cuts[0])}, {"camera_right", cut_json(cuts[1])}};
}

}  // namespace

Json advice_json(const Advice& advice) {
    Json fixes = Json::array();
    for (const Fix& fix : advice.fixes) fixes.push_back(fix_json(fix, without_controls(advice.key)));
    Json heights = Json::object();
    for (const HeightCutOff& cut : advice.heights) heights[cut.face] = eyes_json(cut.above_m);
    return {{"title", advice.title},
            {"key", advice.key},
            {"key_height_m", number(advice.key_height_m)},
            {"now", look_json(advice.now)},
            {"fixes", fixes},
            {"eye_lost_above_m", heights},
            {"eye_lost_when_turned_deg",
             {{"camera_left", eyes_json(advice.turns.left_deg)}, {"camera_right", eyes_json(advice.turns.right_deg)}}}};
}

}  // namespace understudy
