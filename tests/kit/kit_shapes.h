// Every shape of a modifier, and a front to set it on.
#pragma once

#include <string>
#include <vector>

#include "kit/emitter.h"

namespace understudy {

struct NamedShape {
    std::string name;
    ModifierShape shape;
};

// At least one of every alternative; emitter_test.cpp checks that none is missing.
inline std::vector<NamedShape> every_shape() {
    return {{"rectangle", RectangleShape{0.6, 0.9}},
            {"strip", RectangleShape{0.3, 1.2}},
            {"disc", DiscShape{0.8}},
            {"ring", RingShape{0.45, 0.3}},
            {"triangle", PolygonShape{3, 0.9}},
            {"hexagon", PolygonShape{6, 0.9}},
            {"octagon", PolygonShape{8, 1.2}},
            {"sphere", SphereShape{0.4}},
            {"bulb", SphereShape{0.06}},
            {"shallow dome", DomeShape{1.0, 0.2}},
            {"half-ball dome", DomeShape{1.0, 0.5}}};
}

// A front at a place, its axis along a direction, its up as near the studio's as can be.
inline PlacedFront front_at(const Double3& centre, const Double3& toward) {
    const Double3 axis = glm::normalize(toward);
    const Double3 helper = std::abs(axis.y) < 0.9 ? Double3(0.0, 1.0, 0.0) : Double3(0.0, 0.0, -1.0);
    const Double3 right = glm::normalize(glm::cross(helper, axis));
    return {centre, axis, right, glm::cross(axis, right)};
}

// Not square to any axis, so that a swapped one shows.
inline PlacedFront slanted_front() { return front_at({0.3, 1.9, 0.8}, {-0.4, -0.7, -0.9}); }

// Places that the luminous side can light, near and far, on the axis and off it.
inline std::vector<Vec3> receivers_before(const PlacedFront& front) {
    const auto at = [&](double along, double right, double up) {
        return Vec3(front.centre + along * front.axis + right * front.right + up * front.up);
    };
    return {at(1.3, 0.0, 0.0), at(0.9, 0.5, -0.2), at(0.6, -1.0, 0.7), at(3.0, 2.0, 2.0)};
}

}  // namespace understudy
