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

BoneMatrices bent(const BonePivots& pivots, const SitterSettings& pose) {
    constexpr std::array<Bone, 4> kChain = {kNeck1, kNeck2, kNeck3, kSkull};
    constexpr double kPart = 1.0 / static_cast<double>(kChain.size());
    const auto turned = [&](double angle_deg) { return turned_about(pivots[kSkull], angle_deg, {0.0, 1.0, 0.0}); };
    glm::dmat4 bend = turned_about(pivots[kNeck1], -pose.shoulders_deg, {0.0, 0.0, 1.0});
    BoneMatrices bones;
    bones.fill(turned(pose.body_deg) * bend);
    double share = 0.0;
    for (const Bone bone : kChain) {
        share += kPart;
        bend = bend * turned_about(pivots.at(bone), -kPart * (pose.lean_deg - pose.shoulders_deg), {0.0, 0.0, 1.0}) *
               turned_about(pivots.at(bone), -kPart * pose.chin_deg, {1.0, 0.0, 0.0});
        bones.at(bone) = turned(pose.body_deg + share * (pose.turn_deg - pose.body_deg)) * bend;
    }
    return bones;
}

Double3 moved(const BoneMatrices& bones, const BoneWeights& weights, const Double3& position) {
    Double3 sum(0.0);
    double total = 0.0;
    for (std::size_t b = 0; b < kBoneCount; ++b) {
        const auto weight = static_cast<double>(weights.at(b));
        if (weight == 0.0) continue;
        sum += weight * Double3(bones.at(b) * glm::dvec4(position, 1.0));
        total += weight;
    }
    return sum / total;
}

}  // namespace understudy
