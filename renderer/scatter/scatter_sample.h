// What sampling and evaluating a surface give back.
#pragma once

#include "base/geometry.h"
#include "scatter/light4.h"

namespace understudy {

struct ScatterSample {
    Vec3 wi;
    Light4 weight;         // value times cosine over density
    float density = 0.0F;  // per unit solid angle of wi; 0 for a delta direction
    bool delta = false;
};

// Value and density of one pair of directions, for those who need both.
struct ScatterValue {
    Light4 value{0.0F};    // 1/sr, without the cosine
    float density = 0.0F;  // per unit solid angle of wi
};

}  // namespace understudy
