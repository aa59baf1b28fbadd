#include <algorithm>
#include <cmath>
#include <optional>

#include <glm/common.hpp>

#include "meter/extent.h"
#include "meter/warnings.h"

namespace understudy {

namespace {

constexpr double kCentimetres = 100.0;
// A thing that lies on the floor is not under it, and one that touches a wall is not behind it.
constexpr double kTouching = 0.005;

struct Box {
    Double3 low{1e9};
    Double3 high{-1e9};
    void hold(const Double3& point) {
        low = glm::min(low, point);
        high = glm::max(high, point);
    }
};

Box box_of(const Standing& thing) {
    Box box;
    for (const Double3& point : thing.points) box.hold(point);
    return box;
}

// None with nobody there.
std::optional<Box> sitters_box(const Studio& studio) {
    const Sitter& sitter = studio.sitter;
    Box box;
    if (sitter.kind == Sitter::Kind::kNobody) return std::nullopt;
    if (sitter.kind == Sitter::Kind::kBall) {
        box.hold(studio.face - Double3(sitter.ball_radius_m));
        box.hold(studio.face + Double3(sitter.ball_radius_m));
    }
    for (const Vec3& point : sitter.mesh.positions) box.hold(Double3(point));
    return box;
}

// The lowest part of the thing straight over the sitter, metres over the sitter's top.
std::optional<double> height_over(const Standing& thing, const Box& sitter) {
    std::optional<double> lowest;
    for (const Double3& point : thing.points) {
        const bool over = point.x >= sitter.low.x && point.x <= sitter.high.x && point.z >= sitter.low.z &&
                          point.z <= sitter.high.z && point.y >= sitter.high.y;
        if (over) lowest = std::min(lowest.value_or(1e9), point.y - sitter.high.y);
    }
    return lowest;
}

// How far the box reaches beyond a room round the mark, metres; not positive when it does not.
double beyond_walls(const Box& box, const Double3& size) {
    const double x = std::max(box.high.x, -box.low.x) - 0.5 * size.x;
    const double z = std::max(box.high.z, -box.low.z) - 0.5 * size.y;
    return std::max(x, z);
}

// How far the thing reaches behind the upright backdrop, metres; not positive when it does not.
double behind_backdrop(const Standing& thing, const BackdropSettings& backdrop) {
    double deepest = 0.0;
    for (const Double3& point : thing.points) {
        if (std::abs(point.x) > 0.5 * backdrop.width_m || point.y > backdrop.height_m) continue;
        deepest = std::max(deepest, -backdrop.distance_m - point.z);
    }
    return deepest;
}

void warn_of_room(const std::string& name, const Box& box, const RoomSettings& room, std::vector<Warning>& warnings) {
    if (!room.size_m) return;
    const double clearance = room.size_m->z - box.high.y;
    if (clearance < -kTouching) warnings.push_back({WarningKind::kCeiling, name, kCentimetres * clearance, {}, {}, {}});
    const double beyond = beyond_walls(box, *room.size_m);
    if (beyond > kTouching) warnings.push_back({WarningKind::kOutsideRoom, name, kCentimetres * beyond, {}, {}, {}});
}

}  // namespace

std::vector<Warning> warn_of_stands(const Studio& studio, const Stage& stage) {
    std::vector<Warning> warnings;
    const auto sitter = sitters_box(studio);
    for (const Standing& thing : standing_things(studio, stage)) {
        const Box box = box_of(thing);
        const auto over = sitter ? height_over(thing, *sitter) : std::nullopt;
        if (over) warnings.push_back({WarningKind::kOverhead, thing.name, kCentimetres * *over, {}, {}, {}});
        if (box.low.y < -kTouching) {
            warnings.push_back({WarningKind::kBelowFloor, thing.name, -kCentimetres * box.low.y, {}, {}, {}});
        }
        warn_of_room(thing.name, box, studio.setup.room, warnings);
        const auto& backdrop = studio.setup.backdrop;
        const double behind = backdrop ? behind_backdrop(thing, *backdrop) : 0.0;
        if (behind > kTouching) {
            warnings.push_back({WarningKind::kBehindBackdrop, thing.name, kCentimetres * behind, {}, {}, {}});
        }
    }
    Box camera;
    camera.hold(studio.camera.centre);
    warn_of_room("camera", camera, studio.setup.room, warnings);
    return warnings;
}

}  // namespace understudy
