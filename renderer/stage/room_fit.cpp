#include "stage/room_fit.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace understudy {

namespace {

constexpr double kTolerance = 1e-3;  // metres: a panel may lie on the floor

struct Side {
    std::string_view name;
    std::string_view key;  // of a stand, that would bring the thing back
    double beyond_m = 0.0;
};

// The side that the point lies farthest beyond.
Side farthest_side(const Double3& p, const Double3& size_m) {
    const std::array<Side, 6> sides = {{{"the floor", "height", -p.y},
                                        {"the ceiling", "height", p.y - size_m.y},
                                        {"the camera-left wall", "distance", -p.x - 0.5 * size_m.x},
                                        {"the camera-right wall", "distance", p.x - 0.5 * size_m.x},
                                        {"the back wall", "distance", -p.z - 0.5 * size_m.z},
                                        {"the wall behind the camera", "distance", p.z - 0.5 * size_m.z}}};
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
    const auto check = [&](const std::string& what, const Placement& placement, const Double3& middle) {
        const Side side = farthest_side(middle, {said.x, said.z, said.y});
        if (side.beyond_m <= kTolerance) return;
        const bool at_position = std::holds_alternative<Double3>(placement.where);
        problems.push_back(
            {Blame::kWrongInput,
             fmt::format("{}: {} {} stands {:.2f} m beyond {} of the room, [room] size = [{:.4g}, {:.4g}, "
                         "{:.4g}]; expected its middle inside",
                         place_text(placement.said_at), at_position ? "position:" : fmt::format("{}:", side.key), what,
                         side.beyond_m, side.name, said.x, said.y, said.z)});
    };
    check("the camera", setup.camera.placement, studio.camera.centre);
    for (std::size_t i = 0; i < emitters.size(); ++i) {
        check(fmt::format("the light \"{}\"", setup.lights[i].name), setup.lights[i].placement,
              Double3(emitters[i].centre()));
    }
    for (std::size_t i = 0; i < panels.size(); ++i) {
        check(fmt::format("the panel \"{}\"", setup.panels[i].name), setup.panels[i].placement,
              Double3(panels[i].centre()));
    }
    return problems;
}

}  // namespace understudy
