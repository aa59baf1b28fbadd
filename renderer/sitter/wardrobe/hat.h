// A felt hat with a brim, fitted to a straight head.
#pragma once

#include "setup/wardrobe_settings.h"
#include "sitter/skinned_mesh.h"

namespace understudy {

// Where the hat sits: the plane of its band. What grows above it is under the crown.
struct HatBand {
    Double3 middle{0.0};
    Double3 up{0.0, 1.0, 0.0};  // unit

    bool covers(const Double3& straight_head_place) const { return glm::dot(straight_head_place - middle, up) > 0.0; }
};

// Adds the hat to the mesh. eyes: the eyeballs' centres.
HatBand put_on_hat(SkinnedMesh& mesh, const std::array<Double3, 2>& eyes, const HatSettings& hat);

}  // namespace understudy
