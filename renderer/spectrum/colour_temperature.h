// Correlated colour temperature, and shifts of it in mired: how light and gels are named in a studio.
#pragma once

#include <optional>

#include "spectrum/colour.h"

namespace understudy {

// CIE 1960 u, v, in which the correlated colour temperature is defined (CIE 15:2004 section 9.5).
struct UniformChromaticity {
    double u = 0.0;
    double v = 0.0;
};

UniformChromaticity uniform_chromaticity_of(const Xyz& colour);

struct ColourTemperature {
    double kelvin = 0.0;
    double duv = 0.0;  // distance from the black bodies' line in u, v; plus = greener, minus = pinker
};

// Of the nearest black body between 1000 K and 100 000 K. None farther than 0.05 from it, where the term has no meaning
// (CIE 15:2004 section 9.5), and none at or beyond the ends.
std::optional<ColourTemperature> nearest_colour_temperature(const Xyz& colour);

// Micro-reciprocal degrees: equal steps look alike, and a gel shifts any light by about the same number.
inline double mired(double kelvin) { return 1e6 / kelvin; }
inline double kelvin_of_mired(double mireds) { return 1e6 / mireds; }

// Plus is warmer. The result must lie above 0 mired.
inline double shifted_kelvin(double kelvin, double mired_shift) { return kelvin_of_mired(mired(kelvin) + mired_shift); }

}  // namespace understudy
