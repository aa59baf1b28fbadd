// Whether everything stands within the room's walls.
#pragma once

#include <vector>

#include "base/problem.h"
#include "kit/emitter.h"
#include "stage/board.h"
#include "stage/studio.h"

namespace understudy {

// Lights, panels and the camera whose middle lies beyond wall, ceiling or floor, each a problem; none without a room.
// An edge that reaches through is a matter for the report's warnings: the room cuts it off.
Problems outside_room(const Studio& studio, const std::vector<Emitter>& emitters, const std::vector<Board>& panels);

}  // namespace understudy
