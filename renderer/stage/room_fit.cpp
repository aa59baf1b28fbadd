#include "stage/room_fit.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace understudy {

namespace {

constexpr int kEdgePoints = 32;
constexpr float kFarOff = 1000.0F;   // metres
constexpr double kTolerance = 1e-3;  // metres: a panel may lie on the floor

struct Side {
    std::string_view name;
    std::string_view key;  // of a stand, that would bring the thing back
    double beyond_m = 0.0;
};

// The side that the points reach through farthest.
Side farthest_side(const std::vector<Vec3>& points, const Double3& size_m) {
    std::array<Side, 6> sides = {{{"the floor", "height"},
                                  {"the ceiling", "height"},
                                  {"the camera-left wall", "distance"},
                                  {"the camera-right wall", "distance"},
                                  {"the back wall", "distance"},
                                  {"the wall behind the camera", "distance"}}};
    for (const Vec3& point : points) {
        const Double3 p(point);
        const std::array<double, 6> beyond = {-p.y,
                                              p.y - size_m.y,
                                              -p.x - 0.5 * size_m.x,
                                              p.x - 0.5 * size_m.x,
                                              -p.z - 0.5 * size_m.z,
                                              p.z - 0.5 * size_m.z};
        for (std::size_t i = 0; i < sides.size(); ++i) sides[i].beyond_m = std::max(sides[i].beyond_m, beyond[i]);
    }
    return *std::max_element(sides.begin(), sides.end(),
                             [](const Side& a, const Side& b) { return a.beyond_m < b.beyond_m; });
}

}  // namespace

Problems outside_room(const Studio& studio, const std::vector<Emitter>& emitters, const std::vector<Board>& panels) {
    Problems problems;
    const Setup& setup = studio.setup;
    if (!setup.room.size_m) return problems;
    // As the file has them: width, depth, height.
    const Double3& said = *setup.room.size_m;
    const auto check = [&](const std::string& what, const Placement& placement, const std::vector<Vec3>& points) {
        const Side side = farthest_side(points, {said.x, said.z, said.y});
        if (side.beyond_m <= kTolerance) return;
        const bool at_position = std::holds_alternative<Double3>(placement.where);
        const SourcePlace& place = placement.said_at;
        problems.push_back(
            {Blame::kWrongInput,
             fmt::format("{}:{}:{}: {} {} reaches {:.2f} m through {} of the room, [room] size = [{:.4g}, {:.4g}, "
                         "{:.4g}]; expected all of it inside",
                         place.file, place.line, place.column, at_position ? "position:" : fmt::format("{}:", side.key),
                         what, side.beyond_m, side.name, said.x, said.y, said.z)});
    };
    check("the camera", setup.camera.placement, {Vec3(studio.camera.centre)});
    for (std::size_t i = 0; i < emitters.size(); ++i) {
        const Emitter& emitter = emitters[i];
        // A ball has another outline from every side; from far off along two of the room's axes it is a great circle.
        std::vector<Vec3> points = emitter.outline(emitter.centre() + Vec3(kFarOff, 0.0F, 0.0F), kEdgePoints);
        const auto along = emitter.outline(emitter.centre() + Vec3(0.0F, 0.0F, kFarOff), kEdgePoints);
        points.insert(points.end(), along.begin(), along.end());
        points.push_back(emitter.centre());
        check(fmt::format("the light \"{}\"", setup.lights[i].name), setup.lights[i].placement, points);
    }
    for (std::size_t i = 0; i < panels.size(); ++i) {
        check(fmt::format("the panel \"{}\"", setup.panels[i].name), setup.panels[i].placement,
              panels[i].outline(kEdgePoints));
    }
    return problems;
}

}  // namespace understudy
