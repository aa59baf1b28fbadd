// A rod bent along a way: rims, bridges and temples.
#pragma once

#include "sitter/skinned_mesh.h"

namespace understudy {

struct TubePoint {
    Double3 middle{0.0};
    Double3 across{0.0};  // direction of the section's first half axis; need be neither unit nor square to the way
    double half_across = 0.001;
    double half_deep = 0.001;  // square to that and to the way
};

// An oval section along the points, closed to a loop or with rounded ends; moved by the skull.
void add_tube(SkinnedMesh& mesh, const std::vector<TubePoint>& points, bool loop, Zone zone);

// A ball pressed flat along one axis, moved by the skull.
void add_pad(SkinnedMesh& mesh, const Double3& middle, const Double3& flat, const Double3& half_axes, Zone zone);

}  // namespace understudy
