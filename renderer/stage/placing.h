// Where a studio's things come to stand, and what its sitter looks at.
#pragma once

#include <optional>

#include "stage/studio.h"

namespace understudy {

// Lights and panels where the studio's setup and points put them, windows upright in their walls. Whatever cannot stand
// is a problem; the rest is placed.
Problems place_things(Studio& studio);

// None: straight on, or along angles of its own.
std::optional<Double3> gaze_target(const Studio& studio);

}  // namespace understudy
