// Measuring the colour of each light at the face.
#pragma once

#include <vector>

#include "meter/colour_reading.h"
#include "meter/light_powers.h"
#include "stage/stage.h"

namespace understudy {

// One a layer: read as the light's own reading is, square to the light and nobody there, with what panels, backdrop and
// walls send back of it, so a gold panel shows. The ambient is read toward the camera. nobody: the stage without the
// sitter.
std::vector<ColourReading> read_colours(const Studio& studio, const Stage& nobody, const LitStudio& lit);

}  // namespace understudy
