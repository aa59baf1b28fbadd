#include "kit/flash_tube.h"

#include <algorithm>

#include "scatter/microfacet.h"

namespace understudy {

namespace {

constexpr int kBallsOfARing = 16;

// Two faces of glass of index 1.5 reflect 4 % each (Fresnel), of which most comes back in and out again: a few percent
// are lost in all. Frosted glass as clear (common practice, no source).
constexpr float kGlassPasses = 0.95F;

}  // namespace

FlashTube::FlashTube(const Tube& tube, float at) {
    const bool frosted = tube.glass == Tube::Glass::kFrosted;
    if (tube.ring && !frosted) {
        radius_ = static_cast<float>(0.5 * tube.thickness_m);
        for (int i = 0; i < kBallsOfARing; ++i) {
            const Vec2 across = static_cast<float>(0.5 * tube.diameter_m) *
                                turned((static_cast<float>(i) + 0.5F) / static_cast<float>(kBallsOfARing));
            centres_.emplace_back(across, at);
        }
    } else {
        radius_ = static_cast<float>(0.5 * (frosted ? tube.glass_diameter_m : tube.diameter_m));
        centres_.emplace_back(0.0F, 0.0F, at);
    }
    flux_ = tube.glass == Tube::Glass::kNone ? 1.0F : kGlassPasses;
    const auto balls = static_cast<float>(centres_.size());
    radiance_ = flux_ / (balls * kPi * 4.0F * kPi * radius_ * radius_);
}

float FlashTube::cone_depth(float distance2) const {
    const float sine2 = std::min(1.0F, radius_ * radius_ / distance2);
    return sine2 / (1.0F + std::sqrt(1.0F - sine2));
}

float FlashTube::density_toward(float distance2) const {
    return 1.0F / (2.0F * kPi * cone_depth(distance2) * static_cast<float>(centres_.size()));
}

TubeSample FlashTube::sample(const Vec3& receiver, WalkNumbers& random) const {
    const auto ball =
        std::min(static_cast<std::size_t>(random.next() * static_cast<float>(centres_.size())), centres_.size() - 1);
    const float u = random.next();
    const float v = random.next();
    const Vec3 toward = centres_[ball] - receiver;
    const float distance2 = glm::dot(toward, toward);
    if (distance2 <= radius_ * radius_) return {ball, Vec3(0.0F, 0.0F, 1.0F), 0.0F, 0.0F};
    const float sunk = u * cone_depth(distance2);
    const Vec2 across = std::sqrt(sunk * (2.0F - sunk)) * turned(v);
    const Frame frame = Frame::around(toward / std::sqrt(distance2));
    const Vec3 direction = frame.to_world({across.x, across.y, 1.0F - sunk});
    return {ball, direction, glm::dot(toward, direction), density_toward(distance2)};
}

TubePhoton FlashTube::photon(WalkNumbers& random) const {
    const auto ball =
        std::min(static_cast<std::size_t>(random.next() * static_cast<float>(centres_.size())), centres_.size() - 1);
    const float height = 1.0F - 2.0F * random.next();
    const Vec2 round = std::sqrt(std::max(0.0F, 1.0F - height * height)) * turned(random.next());
    const Vec3 normal(round.x, round.y, height);
    const float u = random.next();
    const float v = random.next();
    return {centres_[ball] + radius_ * normal, Frame::around(normal).to_world(sample_cosine(u, v))};
}

}  // namespace understudy
