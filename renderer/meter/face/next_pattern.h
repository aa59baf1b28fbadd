// How far the key is from another pattern.
#pragma once

#include <vector>

#include "meter/face/face_reading.h"
#include "meter/face/face_view.h"

namespace understudy {

// The key's middle is swung round the sitter to either side, and raised and lowered along its arc, its distance to the
// face kept, until the pattern is another one: to the degree and the centimetre. What is not reached within 75 degrees,
// or below the floor, is left out.
std::vector<NextPattern> next_patterns(const Stage& stage, const FaceView& view, const Double3& light,
                                       LightPattern pattern);

}  // namespace understudy
