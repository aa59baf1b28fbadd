// The exact quadrature of an emission table: what each knot counts towards the flux, coordinate by coordinate.
//
// Between the knots the table is linear, so a knot counts the integral of its own hat function times the measure; the
// four coordinates separate. Measures: area of the front, and projected solid angle.
#pragma once

#include <vector>

#include "kit/emission_table.h"

namespace understudy {

struct EmissionWeights {
    std::vector<double> across;  // with `along`: m², summed to the area of the whole front
    std::vector<double> along;
    std::vector<double> angles;  // with `azimuths`: sr, summed to the projected solid angle of all directions
    std::vector<double> azimuths;
};

EmissionWeights emission_weights(const EmissionLayout& layout);
// The flux of values that are linear between the knots.
double emission_flux(const EmissionLayout& layout, const std::vector<float>& values);

// Azimuth as the table has it, without a sine: the angle's place on the square |x| + |y| = 1, 0 … 4 once round.
inline float azimuth_on_square(float x, float y) {
    const float sum = std::abs(x) + std::abs(y);
    const float turn = sum > 0.0F ? x / sum : 1.0F;
    return y >= 0.0F ? 1.0F - turn : 3.0F + turn;
}

// And back: a vector of that azimuth, not unit.
inline Vec2 from_square(float azimuth) {
    const float turn = azimuth < 2.0F ? 1.0F - azimuth : azimuth - 3.0F;
    const float rest = 1.0F - std::abs(turn);
    return {turn, azimuth < 2.0F ? rest : -rest};
}

}  // namespace understudy
