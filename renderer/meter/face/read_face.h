// Everything that the report says of the light on the face.
#pragma once

#include "meter/face/face_reading.h"
#include "meter/light_powers.h"
#include "meter/reading.h"

namespace understudy {

// None for a sitter without eyes, nose and lips.
std::optional<FaceReading> read_face(const Studio& studio, const Stage& stage, const Stage& nobody,
                                     const LitStudio& lit, const std::vector<Catchlight>& catchlights);

}  // namespace understudy
