// How the key's light falls off: over the face, down to the chest, and as the sitter moves.
#pragma once

#include "meter/face/face_reading.h"
#include "meter/light_powers.h"

namespace understudy {

// Of the key alone, with what the studio sends back of it; nobody: the studio without the sitter. The receptor is flat
// and faces the key's middle.
KeyFallOff key_fall_off(const Studio& studio, const Stage& nobody, const LitStudio& lit);

}  // namespace understudy
