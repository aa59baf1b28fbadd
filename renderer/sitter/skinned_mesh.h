// A mesh that bones move: the straight head with whatever it wears.
#pragma once

#include "sitter/refine.h"

namespace understudy {

struct SkinnedMesh {
    std::vector<Double3> positions;
    std::vector<BoneWeights> weights;
    std::vector<std::array<std::uint32_t, 3>> triangles;
    std::vector<Zone> zones;
};

// The refined head's quads as triangles; positions keep their numbers.
SkinnedMesh skin_mesh(const RefinedHead& head);

// Area-weighted, unit.
std::vector<Double3> smooth_normals(const std::vector<Double3>& positions,
                                    const std::vector<std::array<std::uint32_t, 3>>& triangles);

}  // namespace understudy
