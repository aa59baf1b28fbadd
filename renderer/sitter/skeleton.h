// How a head turns on its neck, and how the arms of the standing mesh are let down.
#pragma once

#include <glm/mat4x4.hpp>

#include "sitter/head_data.h"

namespace understudy {

using BoneMatrices = std::array<glm::dmat4, kBoneCount>;
using BonePivots = std::array<Double3, kBoneCount>;

BonePivots bone_pivots(const HeadData& data, const std::vector<Double3>& positions);

// The package's arms stand off by about 40°; this lets them hang.
BoneMatrices hanging_arms(const BonePivots& pivots);

// Turn, chin and lean in equal shares over the three neck bones and the skull: what reaches the skull is the whole
// angle. The turn is round the upright axis through the skull's pivot.
BoneMatrices bent_neck(const BonePivots& pivots, double turn_deg, double chin_deg, double lean_deg);

Double3 moved(const BoneMatrices& bones, const BoneWeights& weights, const Double3& position);

}  // namespace understudy
