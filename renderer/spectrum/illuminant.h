// Spectra of light sources: black bodies, daylight and the CIE's named illuminants. Relative: 100 at 560 nm for the
// computed ones, as tabulated for the others.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "spectrum/spectrum.h"

namespace understudy {

// Planck's law with the second radiation constant of CODATA 2018.
Spectrum planck_spectrum(double kelvin);

// CIE daylight of a correlated colour temperature from 4000 to 25 000 K, CIE 15:2004 section 3.1.
Spectrum daylight_spectrum(double kelvin);

// The spectrum that a colour temperature stands for: Planck's below 4000 K (glowing lamps), CIE daylight from 4000 to
// 25 000 K (flash, sky), Planck's again above, where the CIE gives no daylight.
Spectrum spectrum_of_temperature(double kelvin);

// "A", "D65", "FL11", "LED-B3", …; none if the name is not known. Beside the CIE's stand the three lights of ISO 7589:
// "studio-tungsten", "photoflood" and, as "xenon-flash", its photographic daylight. That is a stand-in: flash tubes
// with a coated dome are made to match daylight film, and a tube's continuum is smooth enough; a real tube's weak lines
// from 450 to 490 nm are left out, for no measured spectrum was at hand.
std::optional<Spectrum> cie_illuminant(std::string_view name);

std::vector<std::string> cie_illuminant_names();

}  // namespace understudy
