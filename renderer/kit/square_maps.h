// Area-preserving maps from the unit square onto flat fronts, and back.
//
// Every map has a constant Jacobian, so a density over the square divided by the front's area is a density over the
// front. The disc goes through the concentric map of Shirley and Chiu, "A Low Distortion Map Between Disk and Square",
// JGT 2(3), 1997: neighbours stay neighbours, which keeps stratified samples stratified and a coarse grid of the square
// meaningful.
#pragma once

#include "base/geometry.h"

namespace understudy {

// Polar coordinates on the unit disc; area is proportional to radius² · angle.
struct DiscPoint {
    float radius = 0.0F;  // 0 … 1
    float angle = 0.0F;   // radians, −π … π
};

DiscPoint square_to_disc(const Vec2& square);
Vec2 disc_to_square(const DiscPoint& point);

}  // namespace understudy
