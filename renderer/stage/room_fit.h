// Whether everything stands within the room's walls.
#pragma once

#include <vector>

#include "base/problem.h"
#include "kit/emitter.h"
#include "stage/board.h"
#include "stage/studio.h"

namespace understudy {

// Lights, panels and the camera that reach through wall, ceiling or floor, each a problem; none without a room.
Problems outside_room(const Studio& studio, const std::vector<Emitter>& emitters, const std::vector<Board>& panels);

}  // namespace understudy
