// The whole reading of a studio: every point, the ratio, the eyes and their catchlights.
#pragma once

#include "meter/light_powers.h"
#include "meter/reading.h"
#include "stage/stage.h"

namespace understudy {

// stage: with the sitter; nobody: the same studio without.
MeterReport read_meter(const Studio& studio, const Stage& stage, const Stage& nobody, const LitStudio& lit);

}  // namespace understudy
