// Area-preserving maps from the unit square onto flat fronts, and back.
//
// Every map has a constant Jacobian, so a density over the square divided by the front's area is a density over the
// front. The disc goes through the concentric map of Shirley and Chiu, "A Low Distortion Map Between Disk and Square",
// JGT 2(3), 1997: neighbours stay neighbours, which keeps stratified samples stratified and a coarse grid of the square
// meaningful.
#pragma once

#include <array>

#include "base/turns.h"

namespace understudy {

// Polar coordinates on the unit disc; area is proportional to radius² · angle.
struct DiscPoint {
    float radius = 0.0F;  // 0 … 1
    float angle = 0.0F;   // radians, −π … π
};

DiscPoint square_to_disc(const Vec2& square);
Vec2 disc_to_square(const DiscPoint& point);

// The same point with its direction instead of its angle; the map's four wedges make that a matter of −π/4 … π/4.
struct DiscVector {
    float radius = 0.0F;
    Vec2 direction{1.0F, 0.0F};  // unit
};
inline DiscVector square_to_disc_vector(const Vec2& square) {
    const std::array<float, 2> place{2.0F * square.x - 1.0F, 2.0F * square.y - 1.0F};
    const auto upright = static_cast<std::size_t>(std::abs(place[0]) <= std::abs(place[1]));
    const float radius = place[upright];
    const float ratio = radius != 0.0F ? place[1 - upright] / radius : 0.0F;
    const Vec2 narrow = narrow_cos_sin(kPi / 4.0F * ratio);
    const float side = std::copysign(1.0F, radius);
    const std::array<float, 2> direction{side * narrow.x, side * narrow.y};
    return {std::abs(radius), {direction[upright], direction[1 - upright]}};
}

}  // namespace understudy
