// What a light reads by itself, for each lumen that leaves its modifier.
#pragma once

#include <cstddef>

#include "kit/built_modifier.h"
#include "spectrum/spectrum.h"
#include "stage/stage.h"

namespace understudy {

// lx/lm at the face, the receptor flat and square to the light's centre, nobody there, with what the studio sends back.
double own_reading_per_lumen(const Studio& studio, const Stage& nobody, std::size_t light, const Spectrum& spectrum);

// lx/lm on the modifier's axis in an empty studio, so far from its front.
double axis_reading_per_lumen(const ModifierSettings& modifier, const BuiltModifier& built, double distance_m);

}  // namespace understudy
