// A head of the user's own, from an .obj file: no rig, no shapes; it turns as one piece.
#pragma once

#include <optional>

#include "sitter/skinned_mesh.h"

namespace understudy {

struct OwnHead {
    SkinnedMesh mesh;  // metres, the studio's axes, the eyes' midpoint (known or guessed) at the origin
    std::optional<std::array<Double3, 2>> eye_centres;  // [0] the sitter's right
    double pivot_behind_eyes = 0.0;                     // of the turning axis
};

Expected<OwnHead> read_own_head(const OwnMesh& own);

}  // namespace understudy
