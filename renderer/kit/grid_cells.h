// How much light a grid lets pass, by the exact geometry of its cells.
//
// Seen along a direction, a cell's far opening is its near one shifted by depth · tan(angle): what passes is the two
// openings' overlap. The walls are black and have no thickness. Nothing passes beyond tan(angle) = width / depth.
#pragma once

#include "base/geometry.h"
#include "setup/construction.h"

namespace understudy {

// The share of the light in a direction (unit, z along the axis, z > 0) that passes, over all places of a cell.
float grid_passes(const Grid& grid, const Vec3& direction);

// The full angle in which any light passes, radians; of square cells, along their sides.
double grid_cut_off(const Grid& grid);
// From the axis, of the farthest direction in which any light passes: of square cells, along their diagonal.
double grid_reach(const Grid& grid);

}  // namespace understudy
