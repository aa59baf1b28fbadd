// How far from a point there is surely no triangle: what spares a walk under the skin most of its rays.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "base/geometry.h"

namespace understudy {

class DistanceGrid {
  public:
    DistanceGrid(const std::vector<Vec3>& positions, const std::vector<std::array<std::uint32_t, 3>>& triangles);

    // Metres, at most kFarthest; 0 where nothing is known, off the grid.
    float free_around(const Vec3& point) const;

    static constexpr float kFarthest = 6.0e-3F;

  private:
    static constexpr float kStep = 1.0e-3F;             // between nodes
    static constexpr float kUnit = kFarthest / 255.0F;  // of what a node holds, rounded down

    void fill_slab(int first, int last, const std::vector<Vec3>& positions, const std::vector<float>& gaps);
    std::size_t node(int x, int y, int z) const {
        const int row = z * count_[1] + y;
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(count_[0]) + static_cast<std::size_t>(x);
    }

    Vec3 low_{0.0F};
    std::array<int, 3> count_{};
    std::vector<std::uint8_t> nodes_;
};

}  // namespace understudy
