// Where skin ends and the plain cloth begins: a crew neck, cut cleanly through the triangles.
#pragma once

#include "sitter/refine.h"

namespace understudy {

struct SkinnedMesh {
    std::vector<Double3> positions;
    std::vector<BoneWeights> weights;
    std::vector<std::array<std::uint32_t, 3>> triangles;
    std::vector<Zone> zones;
};

// The coarse mesh with what lies under the cloth evened out, as cloth spans hollows and small bumps.
std::vector<Double3> draped(const HeadData& data, std::vector<Double3> positions, const Double3& neck_base);

// Positions of the refined head keep their numbers; new ones on the neckline come after them. `neck_base` is the pivot
// of the lowest neck bone.
SkinnedMesh dress(const RefinedHead& head, const Double3& neck_base);

// Area-weighted, unit.
std::vector<Double3> smooth_normals(const std::vector<Double3>& positions,
                                    const std::vector<std::array<std::uint32_t, 3>>& triangles);

}  // namespace understudy
