// Area-preserving maps from the unit square onto flat fronts, and back.
//
// Every map has a constant Jacobian, so a density over the square divided by the front's area is a density over the
// front. The disc goes through the concentric map of Shirley and Chiu, "A Low Distortion Map Between Disk and Square",
// JGT 2(3), 1997: neighbours stay neighbours, which keeps stratified samples stratified and a coarse grid of the square
// meaningful.
#pragma once

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
    const float a = 2.0F * square.x - 1.0F;
    const float b = 2.0F * square.y - 1.0F;
    const bool wide = std::abs(a) > std::abs(b);
    const float radius = wide ? a : b;
    const float ratio = radius != 0.0F ? (wide ? b : a) / radius : 0.0F;
    const Vec2 narrow = narrow_cos_sin(kPi / 4.0F * ratio);
    const Vec2 direction = wide ? narrow : Vec2(narrow.y, narrow.x);
    return {std::abs(radius), radius < 0.0F ? -direction : direction};
}

}  // namespace understudy
