// Colours of the eye's white and what lies about it. Plausible curves, invented: no source.
#pragma once

#include "spectrum/spectrum.h"

namespace understudy {

inline constexpr float kTearIndex = 1.336F;
inline constexpr float kTearRoughness = 0.05F;  // invented

// The white without any blood.
Spectrum sclera_albedo();

// Of blood, 1/cm: what a depth of it in centimetres takes of the white is the exponential of their product.
Spectrum eye_blood_per_cm();

// Depths of blood for it: everywhere, in the flush toward the corners, in a vessel. Invented.
inline constexpr float kScleraBloodCm = 0.00012F;
inline constexpr float kFlushBloodCm = 0.0010F;
inline constexpr float kVesselBloodCm = 0.0034F;

}  // namespace understudy
