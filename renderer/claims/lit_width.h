// How wide a front is as its light has it: a cloth that is bright in the middle and dim at its edge acts smaller than
// it measures.
#pragma once

#include "kit/emitter.h"

namespace understudy {

// Both as shares of the distance, across the light's way and level: a point h above a surface throws an edge h times as
// wide (similar triangles).
struct LitWidth {
    double whole = 0.0;        // from the front's one side to the other
    double middle = 0.0;       // half its light lies to either side of here, from the front's own middle
    double radiance = 0.0;     // mean over what is seen of it, for 1 lm of light out of it: 1/(sr m²)
    double four_fifths = 0.0;  // between where a tenth and nine tenths of its light lie; of an even rectangle 0.8 whole
};

// across: level, and toward the lens's side of the studio (+z). As a place sees the front, nothing in between. Nothing
// of it lights the place: zero.
LitWidth lit_width(const Emitter& light, const Vec3& place);

}  // namespace understudy
