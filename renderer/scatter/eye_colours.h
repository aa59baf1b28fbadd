// Colours of the eye's parts. Plausible curves, invented: no source.
#pragma once

#include "spectrum/spectrum.h"

namespace understudy {

inline constexpr float kTearIndex = 1.336F;
inline constexpr float kTearRoughness = 0.05F;  // invented

// Warm white with a trace of blood.
Spectrum sclera_albedo();

// A mid brown, hazel iris.
Spectrum iris_albedo();

}  // namespace understudy
