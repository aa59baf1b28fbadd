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

}  // namespace understudy
