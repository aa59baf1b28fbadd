#include "kit/emission_sampling.h"

#include <algorithm>
#include <numeric>

namespace understudy {

namespace {

// Directions are told by their stereographic place, (right, up) / (1 + along): its steps are nearly even in angle, and
// its circle of radius 1 is the front's plane.
float place_at(float angle) { return std::tan(0.5F * angle); }

}  // namespace

EmissionSampling::EmissionSampling(UnevenSurface surface)
    : surface_(std::move(surface)),
      scale_(1.0F / place_at(std::clamp(surface_.widest, 0.01F, 0.5F * kPi))),
      aims_(surface_.both_sides ? 2 * kHalf : kHalf) {
    lay_out();
}

EmissionSampling::~EmissionSampling() {
    for (const auto& aim : aims_) delete aim.load();
}

// Along either axis cells widen outwards with the root of the place, for most receivers lie near the axis.
std::size_t EmissionSampling::cell_of(const Vec3& receiver) const {
    constexpr float kMiddle = 0.5F * kSide;
    const float distance = std::max(glm::length(receiver), 1e-6F);
    const float near = scale_ / (distance + std::abs(receiver.z));
    const auto cell = [](float place) {
        const float root = std::min(std::sqrt(std::abs(place)), 1.0F);
        return std::clamp(static_cast<int>(kMiddle + kMiddle * std::copysign(root, place)), 0, kSide - 1);
    };
    const float parallax = surface_.reach / (distance * surface_.parallax_step);
    const int far = static_cast<int>(std::min(parallax, static_cast<float>(kDistances) - 0.5F));
    const int index = (far * kSide + cell(receiver.y * near)) * kSide + cell(receiver.x * near);
    const bool behind = surface_.both_sides && receiver.z < 0.0F;
    return static_cast<std::size_t>(index) + (behind ? kHalf : 0);
}

Vec3 EmissionSampling::receiver_in(std::size_t cell, const Vec3& within) const {
    const std::size_t index = cell % kHalf;
    const auto place = [&](std::size_t i, float part) {
        const float root = (static_cast<float>(i) + part) / (0.5F * kSide) - 1.0F;
        return std::copysign(root * root, root) / scale_;
    };
    Vec2 aside(place(index % kSide, within.x), place(index / kSide % kSide, within.y));
    aside *= std::min(1.0F, 0.98F / std::max(glm::length(aside), 1e-6F));  // the square's corners lie behind
    const float out2 = glm::dot(aside, aside);
    const Vec3 way = Vec3(2.0F * aside, 1.0F - out2) / (1.0F + out2);
    const std::size_t far = index / (std::size_t{kSide} * kSide);
    const float parallax = surface_.parallax_step * (static_cast<float>(far) + within.z);
    return surface_.reach / parallax * Vec3(way.x, way.y, cell < kHalf ? way.z : -way.z);
}

const EmissionSampling::Aim& EmissionSampling::aim_of(std::size_t cell) const {
    if (const Aim* made = aims_[cell].load(std::memory_order_acquire)) return *made;
    // Whoever comes second throws an equal one away.
    auto aim = std::make_unique<const Aim>(make_aim(cell));
    const Aim* there = nullptr;
    if (!aims_[cell].compare_exchange_strong(there, aim.get(), std::memory_order_acq_rel)) return *there;
    return *aim.release();
}

const EmissionSampling::Aim& EmissionSampling::aim_at(const Vec3& receiver) const { return aim_of(cell_of(receiver)); }

std::array<const EmissionSampling::Aim*, kLanes> EmissionSampling::aims_at(const Wide3& receivers) const {
    std::array<const Aim*, kLanes> aims;
    for (std::size_t lane = 0; lane < kLanes; ++lane) aims[lane] = &aim_at(receivers[lane]);
    return aims;
}

void EmissionSampling::lay_out() {
    const int looks = surface_.looks;
    for (std::size_t row = 0; row + 1 < surface_.up.size(); ++row) {
        for (std::size_t column = 0; column + 1 < surface_.across.size(); ++column) {
            const Vec2 from(surface_.across[column], surface_.up[row]);
            const Vec2 to(surface_.across[column + 1], surface_.up[row + 1]);
            areas_.push_back((to.x - from.x) * (to.y - from.y));
            for (int v = 0; v < looks; ++v) {
                for (int u = 0; u < looks; ++u) {
                    const Vec2 within = (Vec2(u, v) + 0.5F) / static_cast<float>(looks);
                    places_.push_back(surface_.point_at(from + within * (to - from)));
                }
            }
        }
    }
}

EmissionSampling::Aim EmissionSampling::make_aim(std::size_t cell) const {
    // As many receivers as there are places in a cell of the square, and each place for another of them.
    const int looks = surface_.looks * surface_.looks;
    std::vector<Vec3> receivers;
    for (int i = 0; i < looks; ++i) {
        const auto along = [](int step, int steps) {
            return (static_cast<float>(step) + 0.5F) / static_cast<float>(steps);
        };
        receivers.push_back(receiver_in(cell, {along(i / surface_.looks, surface_.looks),
                                               along(i % surface_.looks, surface_.looks), along(i, looks)}));
    }
    std::vector<float> weights;
    for (std::size_t part = 0; part < areas_.size(); ++part) {
        weights.push_back(areas_[part] * light_of(part, receivers));
    }
    const float all = std::accumulate(weights.begin(), weights.end(), 0.0F);
    const float least = all > 0.0F ? surface_.least * all : 1.0F;
    for (std::size_t i = 0; i < weights.size(); ++i) weights[i] = std::max(weights[i], least * areas_[i]);
    Aim aim{PlaceWarp(surface_.across, surface_.up, weights), {}};
    for (std::size_t i = 0; i < kGridPoints; ++i) aim.grid[i] = surface_.point_at(aim.warp.at(grid_square(i)).square);
    return aim;
}

// The mean of a few places of a part of the square, so that one which shines in part is not taken for a dark one.
float EmissionSampling::light_of(std::size_t part, const std::vector<Vec3>& receivers) const {
    float sum = 0.0F;
    for (std::size_t i = 0; i < receivers.size(); ++i) {
        sum += surface_.radiance(places_[part * receivers.size() + i], receivers[i]);
    }
    return sum / static_cast<float>(receivers.size());
}

}  // namespace understudy
