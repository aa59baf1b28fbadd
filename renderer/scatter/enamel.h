// Teeth, wet as they are in a mouth.
#pragma once

#include "spectrum/spectrum.h"

namespace understudy {

// A film of water on enamel of index 1.62: both faces together reflect as one face of this index would.
inline constexpr float kWetEnamelIndex = 1.42F;
inline constexpr float kWetEnamelRoughness = 0.09F;  // by eye, no source

// A smooth curve whose colour is that of natural upper incisors: L* 71, b* 17 or so, as measured on living adults by
// Gozalo-Diaz, Johnston and Wee, J. Prosthet. Dent. 99, 2008; the figures from memory.
Spectrum enamel_albedo();

}  // namespace understudy
