// A smooth reflectance that has a given colour: what a paper or a paint of that colour might have.
//
// Many reflectances have one colour; this is a smooth one between 0 and 1,
//   R(λ) = ½ + x / (2 √(1 + x²)) with x quadratic in λ,
// after Jakob and Hanika, "A Low-Dimensional Function Space for Efficient Spectral Upsampling", Eurographics 2019. No
// paper was measured: two materials that match in daylight may part under a lamp.
#pragma once

#include <optional>

#include "spectrum/colour.h"

namespace understudy {

// colour: in daylight D65, relative to its white (lightness 100 is a perfect white). None: too light or too colourful
// for any such reflectance.
std::optional<Spectrum> smooth_reflectance(const Lab& colour);

// The colour of a reflectance in daylight D65.
Lab daylight_colour(const Spectrum& reflectance);

}  // namespace understudy
