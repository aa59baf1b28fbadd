// The mirror image of a point in a cornea.
#pragma once

#include "base/geometry.h"

namespace understudy {

struct MirrorPoint {
    Double3 point{0.0};   // on the sphere, where the light turns toward the camera
    Double3 normal{0.0};  // outward, unit
};

// Where light from one point is reflected by a sphere toward another, both outside it: the normal lies in the plane of
// both and the centre, and halves the angle between the ways to them (Alhazen's problem, solved by bisection to 1e-12
// of the angle).
MirrorPoint mirror_point(const Double3& centre, double radius, const Double3& light, const Double3& camera);

}  // namespace understudy
