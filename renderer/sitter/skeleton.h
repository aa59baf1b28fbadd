// How a body turns and a head on its neck, and how the arms of the standing mesh are let down.
#pragma once

#include <glm/mat4x4.hpp>

#include "setup/sitter_settings.h"
#include "sitter/head_data.h"

namespace understudy {

using BoneMatrices = std::array<glm::dmat4, kBoneCount>;
using BonePivots = std::array<Double3, kBoneCount>;

BonePivots bone_pivots(const HeadData& data, const std::vector<Double3>& positions);

// The package's arms stand off by about 40°; this lets them hang.
BoneMatrices hanging_arms(const BonePivots& pivots);

// The trunk turns by `body` round the upright axis through the skull's pivot and drops a shoulder about the lowest neck
// bone; three neck bones and the skull share what is left to turn, chin and lean, so that the whole angle reaches the
// skull.
BoneMatrices bent(const BonePivots& pivots, const SitterSettings& pose);

Double3 moved(const BoneMatrices& bones, const BoneWeights& weights, const Double3& position);

}  // namespace understudy
