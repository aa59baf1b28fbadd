// How skin follows edges that are moved.
#pragma once

#include <vector>

#include "base/geometry.h"

namespace understudy {

// A point of an edge, and where it is taken: a way in space, or the change of a direction.
struct Pull {
    Double3 at;
    Double3 by;
    bool inner;
};

// Distances from the nearest edge, metres: skin nearer than the first follows wholly, farther than the second stays.
struct Falloff {
    double from = 0.0;
    double to = 0.0;
};

struct Follow {
    Double3 by;
    double share;     // 1 at an edge, 0 where the skin stays
    double to_inner;  // distance to the nearest inner edge
};

// Shepard's inverse-distance weights (1968) within a smooth falloff. `pulls` is not empty.
Follow follow(const std::vector<Pull>& pulls, const Falloff& falloff, const Double3& point);

}  // namespace understudy
