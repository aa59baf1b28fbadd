// What a working studio would call out before anyone sits down: each with a number, none without.
#pragma once

#include <vector>

#include "meter/light_powers.h"
#include "meter/reading.h"
#include "stage/stage.h"

namespace understudy {

// The most important kind first, within a kind by the number that is furthest out of order.
std::vector<Warning> find_warnings(const Studio& studio, const Stage& stage, const Stage& nobody, const LitStudio& lit);

// Parts of it, one subject each.

// Over the sitter, under the floor, through the ceiling or a wall: geometry alone.
std::vector<Warning> warn_of_stands(const Studio& studio, const Stage& stage);
// Between the lens and the face, in the frame, shining into the lens.
std::vector<Warning> warn_of_frame(const Studio& studio, const Stage& stage, const Stage& nobody, const LitStudio& lit);
// Lights and panels that glasses mirror over an eye.
std::vector<Warning> warn_of_glasses(const Studio& studio, const Stage& stage, const LitStudio& lit);
// Lights cut from the face, the sitter's shadow on the backdrop, too much of the room's own light.
std::vector<Warning> warn_of_light(const Studio& studio, const Stage& stage, const Stage& nobody, const LitStudio& lit);

}  // namespace understudy
