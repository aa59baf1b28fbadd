#include "meter/extent.h"

namespace understudy {

namespace {

constexpr int kGrid = 17;         // points across, edges included
constexpr int kEdgePoints = 64;   // a sphere's edge: within a thousandth of its radius
constexpr float kFarAway = 1e3F;  // from where a sphere shows its whole outline

template <class Points>
void add(Standing& thing, const Points& points) {
    for (const Vec3& point : points) thing.points.emplace_back(point);
}

template <class PointAt>
void add_grid(Standing& thing, const PointAt& point_at) {
    for (int row = 0; row < kGrid; ++row) {
        for (int column = 0; column < kGrid; ++column) {
            thing.points.emplace_back(point_at(Vec2(column, row) / static_cast<float>(kGrid - 1)));
        }
    }
}

}  // namespace

std::vector<Standing> standing_things(const Studio& studio, const Stage& stage) {
    std::vector<Standing> things;
    for (std::size_t i = 0; i < stage.emitters().size(); ++i) {
        const Emitter& emitter = stage.emitters()[i];
        Standing thing{studio.setup.lights[i].name, {}};
        for (const Vec3& side : {Vec3(kFarAway, 0.0F, 0.0F), Vec3(0.0F, 0.0F, kFarAway), Vec3(0.0F, kFarAway, 0.0F)}) {
            add(thing, emitter.outline(emitter.centre() + side, kEdgePoints));
            add_grid(thing,
                     [&](const Vec2& square) { return emitter.point_at(square, emitter.centre() + side).position; });
        }
        things.push_back(std::move(thing));
    }
    for (std::size_t i = 0; i < stage.panels().size(); ++i) {
        const Board& panel = stage.panels()[i];
        Standing thing{studio.setup.panels[i].name, {}};
        add(thing, panel.outline(kEdgePoints));
        add_grid(thing, [&](const Vec2& square) { return panel.point_at(square); });
        things.push_back(std::move(thing));
    }
    return things;
}

}  // namespace understudy
