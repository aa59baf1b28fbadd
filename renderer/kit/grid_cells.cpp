#include "kit/grid_cells.h"

#include <algorithm>
#include <cmath>

namespace understudy {

float grid_passes(const Grid& grid, const Vec3& direction) {
    if (direction.z <= 0.0F) return 0.0F;
    // The shift in widths of a cell.
    const float shift = static_cast<float>(grid.depth_m / grid.width_m) / direction.z;
    const float x = shift * std::abs(direction.x);
    const float y = shift * std::abs(direction.y);
    if (grid.cells == Grid::Cells::kSquare) return std::max(0.0F, 1.0F - x) * std::max(0.0F, 1.0F - y);
    // Two equal circles whose centres are so many diameters apart.
    const float apart = std::sqrt(x * x + y * y);
    if (apart >= 1.0F) return 0.0F;
    return 2.0F / kPi * (std::acos(apart) - apart * std::sqrt(1.0F - apart * apart));
}

double grid_cut_off(const Grid& grid) { return 2.0 * std::atan(grid.width_m / grid.depth_m); }

double grid_reach(const Grid& grid) {
    const double farthest = grid.cells == Grid::Cells::kSquare ? std::sqrt(2.0) : 1.0;
    return std::atan(farthest * grid.width_m / grid.depth_m);
}

}  // namespace understudy
