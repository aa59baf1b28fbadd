// Sine and cosine where a path needs them by the million: from the angle as a share of a full turn, which reduces to a
// quarter without rounding. Taylor's series: the first term left out is below half a unit in the last place.
#pragma once

#include <array>

#include "base/geometry.h"

namespace understudy {

template <class Real>
struct CosSin {
    Real cosine, sine;
};

// Of an angle in −π/4 … π/4.
template <class Real>
CosSin<Real> narrow_cos_sin(const Real& angle) {
    const Real square = angle * angle;
    const Real cosine =
        1.0F +
        square * (-1.0F / 2.0F + square * (1.0F / 24.0F + square * (-1.0F / 720.0F +
                                                                    square * (1.0F / 40320.0F - square / 3628800.0F))));
    const Real sine =
        angle +
        angle * square * (-1.0F / 6.0F + square * (1.0F / 120.0F + square * (-1.0F / 5040.0F + square / 362880.0F)));
    return {cosine, sine};
}

// {cos, sin} of so many turns: a few at most.
inline Vec2 turned(float turns) {
    const float nearest = std::floor(4.0F * turns + 0.5F);
    const auto quarter = static_cast<int>(nearest);
    const CosSin<float> rest = narrow_cos_sin((turns - 0.25F * nearest) * (2.0F * kPi));
    // Looked up: a branch would be guessed wrong.
    const auto odd = static_cast<std::size_t>(quarter & 1);
    const float side = 1.0F - static_cast<float>(quarter & 2);
    const std::array<float, 2> across{rest.cosine, -rest.sine};
    const std::array<float, 2> up{rest.sine, rest.cosine};
    return {side * across[odd], side * up[odd]};
}

}  // namespace understudy
