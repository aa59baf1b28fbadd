#include "stage/placing.h"

#include <cmath>

#include <glm/geometric.hpp>

namespace understudy {

namespace {

void append(Problems& all, const Problems& more) { all.insert(all.end(), more.begin(), more.end()); }

// Places of what is named, keeping the problems of all of them.
template <class Settings>
std::vector<PlacedFront> place_all(const std::vector<Settings>& things, const StudioPoints& points,
                                   Problems& problems) {
    std::vector<PlacedFront> fronts;
    for (const Settings& thing : things) {
        const auto front = place_front(thing.placement, points);
        if (front) {
            fronts.push_back(*front);
        } else {
            append(problems, front.problems());
        }
    }
    return fronts;
}

// A window stands upright in its wall, whatever it is aimed at; only one that looks steeply up or down lies in a roof.
void set_windows_upright(const std::vector<LightSettings>& lights, std::vector<PlacedFront>& fronts) {
    constexpr double kSteep = 0.7071;
    for (std::size_t i = 0; i < fronts.size(); ++i) {
        PlacedFront& front = fronts[i];
        if (!std::holds_alternative<WindowShape>(lights[i].modifier.shape) || std::abs(front.axis.y) > kSteep) continue;
        const Double3 zenith(0.0, 1.0, 0.0);
        const Double3 level = glm::normalize(glm::cross(zenith, front.axis));
        // Its roll stays.
        const double cosine = glm::dot(front.right, level);
        const double sine = glm::dot(front.right, glm::cross(front.axis, level));
        front.axis = glm::cross(level, zenith);
        front.right = cosine * level + sine * zenith;
        front.up = cosine * zenith - sine * level;
    }
}

}  // namespace

Problems place_things(Studio& studio) {
    Problems problems;
    studio.lights = place_all(studio.setup.lights, studio.points, problems);
    studio.panels = place_all(studio.setup.panels, studio.points, problems);
    if (problems.empty()) set_windows_upright(studio.setup.lights, studio.lights);
    return problems;
}

std::optional<Double3> gaze_target(const Studio& studio) {
    const Setup& setup = studio.setup;
    if (std::holds_alternative<GazeAtCamera>(setup.sitter.gaze)) return studio.camera.centre;
    if (const auto* light = std::get_if<GazeAtLight>(&setup.sitter.gaze)) {
        for (std::size_t i = 0; i < setup.lights.size(); ++i) {
            if (setup.lights[i].name == light->name) return studio.lights[i].centre;
        }
    }
    return std::nullopt;
}

}  // namespace understudy
