// The skin's relief below what the mesh can show: pores, the net of fine lines between them, the grooves of the lips.
#pragma once

#include "base/geometry.h"

namespace understudy {

// Height in metres, 0 in the mean of lines and grooves and below it in pores, over a place on the straight head, also
// in metres. pores, lip: how much there is of either, 0 … 1.
float skin_relief(const Vec3& place, float pores, float lip);

}  // namespace understudy
