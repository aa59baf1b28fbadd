// How black-and-white film answers light of each wavelength.
#pragma once

#include "spectrum/spectrum.h"

namespace understudy {

// Relative sensitivity per unit of radiant energy: the usual shape of a panchromatic emulsion, even through the visible
// range with a slight dip in the blue-green and its end near 660 nm. Common practice, no source: makers' curves differ.
const Spectrum& panchromatic_response();

}  // namespace understudy
