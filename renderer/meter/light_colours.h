// The spectrum of each light, ready for weighing bands.
#pragma once

#include <string>

#include "setup/setup.h"
#include "spectrum/spectrum.h"
#include "spectrum/waves.h"

namespace understudy {

// Of a named illuminant, or with "" of a colour temperature; scaled to ∫ S ȳ dλ = 1, like all below.
Spectrum white_spectrum(double kelvin, const std::string& illuminant);

// As it leaves the light, through its gels.
Spectrum light_spectrum(const LightColour& colour);

// The share of the light that its gels let through.
double gel_share(const LightColour& colour);

Spectrum ambient_spectrum(const RoomSettings& room);

// What each band of a transfer weighs in a photometric sum for this spectrum; the weights add up to 1.
Bands luminous_weights(const Spectrum& spectrum);

}  // namespace understudy
