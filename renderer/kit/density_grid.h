// The 3 × 3 grid of the unit square that a light's density is made from.
#pragma once

#include <cstddef>

#include "base/geometry.h"

namespace understudy {

inline constexpr std::size_t kGridPoints = 9;

// Row by row.
inline Vec2 grid_square(std::size_t index) {
    const std::size_t row = index / 3;
    return {0.5F * static_cast<float>(index % 3), 0.5F * static_cast<float>(row)};
}

// A little inwards, for what is asked of a ball's emission: the grid's border is the ball's edge, which shows nothing
// to speak of.
inline Vec2 place_inwards(const Vec2& square) {
    constexpr float kShare = 0.75F;
    return 0.5F + kShare * (square - 0.5F);
}

}  // namespace understudy
