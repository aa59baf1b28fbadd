// Which surface each thing on the stage has.
#pragma once

#include <vector>

#include "scatter/surface.h"
#include "setup/setup.h"
#include "sitter/sitter.h"

namespace understudy {

inline constexpr float kBallReflectance = 0.18F;

// Of one and the same surface all over: not of a painted one.
Surface board_surface(const Finish& finish);

// One a zone, in the enum's order.
std::vector<Surface> zone_surfaces(const Sitter& sitter);

Surface eye_white_surface();

}  // namespace understudy
