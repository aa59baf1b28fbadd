#include "advice/eye_state.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "meter/catchlights.h"
#include "meter/eyes.h"
#include "meter/meter_points.h"
#include "meter/ratio.h"
#include "meter/read_point.h"

namespace understudy {

namespace {

// What a search asks first of the light, and how well where that leaves it open.
constexpr double kRough = 0.2;
constexpr double kFine = 0.04;
constexpr double kCheeks = 0.05;
constexpr double kSurely = 3.0;  // standard errors

bool is_cheek(const MeterPoint& point) { return point.name.starts_with("cheek-"); }
bool is_face_dome(const MeterPoint& point) {
    return point.name == "face" && point.receptor == Receptor::kDome && point.facing == Facing::kCamera;
}

template <class Wanted>
std::vector<Reading> read_points(const TrialRoom& room, const Wanted& wanted, double relative) {
    std::vector<Reading> readings;
    for (const MeterPoint& point : meter_points(room.studio())) {
        if (!wanted(point)) continue;
        const Stage& stage = point.free_of_sitter ? room.nobody() : room.stage();
        readings.push_back(read_point(point, stage, room.lit().layers, room.studio().setup.camera.exposure, relative));
    }
    return readings;
}

// Of the mirror image that shows most, in each eye.
std::array<double, 2> most_shown(const TrialRoom& room) {
    std::array<double, 2> shown{0.0, 0.0};
    for (const Catchlight& image : find_catchlights(room.studio(), room.stage(), room.lit(), {}, kRoughlyMirrored)) {
        double& most = shown.at(image.eye == eye_name(0) ? 0 : 1);
        most = std::max(most, image.visible);
    }
    return shown;
}

bool is_lit(const TrialRoom& room, const Eye& eye, double least_lxs) {
    const std::vector<Bands> weights = exposure_weights(room.lit().layers);
    for (const double relative : {kRough, kFine}) {
        const Estimate light = gather_at_iris(room.stage(), eye, weights, {relative, 0.05 * least_lxs}).total;
        const double clear = light.mean - least_lxs;
        if (relative == kFine || std::abs(clear) > kSurely * light.standard_error) return clear >= 0.0;
    }
    return false;
}

std::array<bool, 2> which_alive(const TrialRoom& room, const std::array<double, 2>& shown) {
    std::array<bool, 2> alive{shown[0] >= kShowsEnough, shown[1] >= kShowsEnough};
    if (!alive[0] && !alive[1]) return alive;
    const std::vector<Reading> cheeks = read_points(room, is_cheek, kCheeks);
    const Reading* cheek = brighter_cheek(cheeks);
    if (cheek == nullptr) return {false, false};
    const double least = cheek->exposure_lxs * std::exp2(-kFarthestUnderCheek);
    for (std::size_t e = 0; e < 2; ++e) alive.at(e) = alive.at(e) && is_lit(room, room.stage().eyes()[e], least);
    return alive;
}

}  // namespace

std::array<bool, 2> which_alive(const TrialRoom& room) { return which_alive(room, most_shown(room)); }

bool both_alive(const TrialRoom& room) {
    const std::array<double, 2> shown = most_shown(room);
    if (shown[0] < kShowsEnough || shown[1] < kShowsEnough) return false;
    const auto alive = which_alive(room, shown);
    return alive[0] && alive[1];
}

double read_face(const TrialRoom& room) {
    const std::vector<Reading> readings = read_points(room, is_face_dome, kForReport);
    return readings.empty() ? 0.0 : readings.front().exposure_lxs;
}

EyesState look_at_eyes(const TrialRoom& room) {
    const auto wanted = [](const MeterPoint& point) { return is_cheek(point) || is_face_dome(point); };
    const std::vector<Reading> readings = read_points(room, wanted, kForReport);
    EyesState state;
    const Reading* dome = find_reading(readings, "face", Receptor::kDome, Facing::kCamera);
    state.face_lxs = dome == nullptr ? 0.0 : dome->exposure_lxs;
    state.ratio = lighting_ratio(readings);
    const auto eyes = read_eyes(room.stage(), room.lit().layers, brighter_cheek(readings), state.face_lxs, kForReport);
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
