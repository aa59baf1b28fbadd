// What one setup is like, as far as a change is judged by it.
#pragma once

#include "advice/fix.h"
#include "advice/trial_room.h"

namespace understudy {

// Of the room as it stands.
SetupLook look_of(const TrialRoom& room);

// Only the pattern that the key draws; none for a sitter without a face.
std::optional<LightPattern> pattern_in(const TrialRoom& room);

}  // namespace understudy
