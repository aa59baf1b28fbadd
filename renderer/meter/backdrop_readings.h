// The backdrop as the picture shows it: at the centre and the four corners of the frame.
#pragma once

#include <vector>

#include "meter/light_powers.h"
#include "meter/reading.h"
#include "stage/stage.h"

namespace understudy {

// Where the camera's rays through the middles of these pixels meet the backdrop, the sitter away for finding the place
// and back again for reading it. Another thing there, or nothing, is said and has no tone. readings: with the face's.
std::vector<BackdropPlace> read_backdrop(const Studio& studio, const Stage& stage, const Stage& nobody,
                                         const LitStudio& lit, const std::vector<Reading>& readings);

}  // namespace understudy
