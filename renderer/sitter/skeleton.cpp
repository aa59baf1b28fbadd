#include "sitter/skeleton.h"

#include <glm/gtc/matrix_transform.hpp>

namespace understudy {
namespace {

constexpr double kArmsDownDeg = 29.0;

glm::dmat4 turned_about(const Double3& pivot, double angle_deg, const Double3& axis) {
    const glm::dmat4 there = glm::translate(glm::dmat4(1.0), pivot);
    return glm::translate(glm::rotate(there, radians(angle_deg), axis), -pivot);
}

}  // namespace

BonePivots bone_pivots(const HeadData& data, const std::vector<Double3>& positions) {
    BonePivots pivots{};
    for (std::size_t b = 0; b < kBoneCount; ++b) {
        for (const auto v : data.pivots.at(b)) pivots.at(b) += positions[v];
        pivots.at(b) /= static_cast<double>(data.pivots.at(b).size());
    }
    return pivots;
}

BoneMatrices hanging_arms(const BonePivots& pivots) {
    BoneMatrices bones;
    bones.fill(glm::dmat4(1.0));
    bones[kLeftArm] = turned_about(pivots[kLeftArm], -kArmsDownDeg, {0.0, 0.0, 1.0});
    bones[kRightArm] = turned_about(pivots[kRightArm], kArmsDownDeg, {0.0, 0.0, 1.0});
    return bones;
}

BoneMatrices bent_neck(const BonePivots& pivots, double turn_deg, double chin_deg, double lean_deg) {
    constexpr std::array<Bone, 4> kChain = {kNeck1, kNeck2, kNeck3, kSkull};
    BoneMatrices bones;
    bones.fill(glm::dmat4(1.0));
    glm::dmat4 bend(1.0);
    double share = 0.0;
    for (const Bone bone : kChain) {
        share += 1.0 / static_cast<double>(kChain.size());
        const double part = 1.0 / static_cast<double>(kChain.size());
        bend = bend * turned_about(pivots.at(bone), -part * lean_deg, {0.0, 0.0, 1.0}) *
               turned_about(pivots.at(bone), -part * chin_deg, {1.0, 0.0, 0.0});
        bones.at(bone) = turned_about(pivots[kSkull], share * turn_deg, {0.0, 1.0, 0.0}) * bend;
    }
    return bones;
}

Double3 moved(const BoneMatrices& bones, const BoneWeights& weights, const Double3& position) {
    Double3 sum(0.0);
    double total = 0.0;
    for (std::size_t b = 0; b < kBoneCount; ++b) {
        const double weight = double{weights.at(b)};
        if (weight == 0.0) continue;
        sum += weight * Double3(bones.at(b) * glm::dvec4(position, 1.0));
        total += weight;
    }
    return sum / total;
}

}  // namespace understudy
