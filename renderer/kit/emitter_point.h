// A point of a luminous surface, and where a ray meets one.
#pragma once

#include "base/wide.h"

namespace understudy {

struct EmitterPoint {
    Vec3 position;
    Vec3 normal;  // unit, on the luminous side
    float area;   // dA / du dv, m²
};

// Sixteen of them.
struct WideEmitterPoints {
    Wide3 position, normal;
    Wide area;
};

struct EmitterHit {
    float distance = 0.0F;
    Vec3 normal{0.0F};     // geometric, unit, on the luminous side
    bool luminous = true;  // seen from the luminous side
};

}  // namespace understudy
