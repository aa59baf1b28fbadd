// The spectrum of each light, ready for weighing bands.
#pragma once

#include "setup/setup.h"
#include "spectrum/spectrum.h"
#include "spectrum/waves.h"

namespace understudy {

// Of the light's colour temperature or named illuminant, scaled to ∫ S ȳ dλ = 1.
Spectrum light_spectrum(const LightColour& colour);
Spectrum ambient_spectrum(const RoomSettings& room);

// What each band of a transfer weighs in a photometric sum for this spectrum; the weights add up to 1.
Bands luminous_weights(const Spectrum& spectrum);

}  // namespace understudy
