#include "advice/eye_state.h"

#include "meter/catchlights.h"
#include "meter/eyes.h"
#include "meter/meter_points.h"
#include "meter/ratio.h"
#include "meter/read_point.h"

namespace understudy {

EyesState look_at_eyes(const TrialRoom& room, double relative) {
    const ExposureSettings& exposure = room.studio().setup.camera.exposure;
    std::vector<Reading> readings;
    for (const MeterPoint& point : meter_points(room.studio())) {
        const bool cheek = point.name.starts_with("cheek-");
        const bool dome = point.name == "face" && point.receptor == Receptor::kDome && point.facing == Facing::kCamera;
        if (!cheek && !dome) continue;
        const Stage& stage = point.free_of_sitter ? room.nobody() : room.stage();
        readings.push_back(read_point(point, stage, room.lit().layers, exposure, relative));
    }
    EyesState state;
    const Reading* dome = find_reading(readings, "face", Receptor::kDome, Facing::kCamera);
    state.face_lxs = dome == nullptr ? 0.0 : dome->exposure_lxs;
    state.ratio = lighting_ratio(readings);
    const auto eyes = read_eyes(room.stage(), room.lit().layers, brighter_cheek(readings), state.face_lxs, relative);
    const auto catchlights = find_catchlights(room.studio(), room.stage(), room.lit(), eyes);
    for (std::size_t e = 0; e < eyes.size(); ++e) {
        EyeState& eye = state.eyes.at(e);
        eye.verdict = eyes[e].verdict;
        eye.stops_from_cheek = eyes[e].stops_from_cheek;
        for (const Catchlight& image : catchlights) {
            if (image.eye != eyes[e].eye || image.visible <= eye.shown) continue;
            eye.shown = image.visible;
            eye.catchlight = image.light;
            eye.clock_deg = image.clock_deg;
        }
    }
    return state;
}

}  // namespace understudy
