// The bent way of light through the cornea to a point behind it, solved and not searched for by chance.
//
// Point, corneal centre and light lie in one plane, and all that refracts is one sphere, so the way is the root of one
// equation in one angle. Its measure (how much solid angle at the point belongs to an area at the light) is closed
// too: a bundle about the line from the corneal centre through the point stays symmetric about it.
#pragma once

#include <optional>

#include "base/geometry.h"
#include "sitter/eye.h"

namespace understudy {

struct BentWay {
    Vec3 exit{0.0F};             // on the cornea
    Vec3 normal{0.0F};           // there, outward
    Vec3 inside{0.0F};           // unit, from the point to the exit
    float transmittance = 0.0F;  // of the cornea, by Fresnel
    float spread = 0.0F;         // 1/m²: solid angle at the point for each area at the light square to the way
};

// From a point within the cornea's sphere to a light outside it. None when the way leaves elsewhere than through the
// cornea, or when every way there is totally reflected.
std::optional<BentWay> bent_way(const Eye& eye, const Vec3& point, const Vec3& light);

}  // namespace understudy
