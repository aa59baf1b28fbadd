// Sine and cosine where a path needs them by the million: from the angle as a share of a full turn, which reduces to a
// quarter without rounding. Taylor's series: the first term left out is below half a unit in the last place.
#pragma once

#include "base/geometry.h"

namespace understudy {

// {cos, sin} of an angle in −π/4 … π/4.
inline Vec2 narrow_cos_sin(float angle) {
    const float square = angle * angle;
    const float cosine =
        1.0F +
        square * (-1.0F / 2.0F + square * (1.0F / 24.0F + square * (-1.0F / 720.0F +
                                                                    square * (1.0F / 40320.0F - square / 3628800.0F))));
    const float sine =
        angle +
        angle * square * (-1.0F / 6.0F + square * (1.0F / 120.0F + square * (-1.0F / 5040.0F + square / 362880.0F)));
    return {cosine, sine};
}

// {cos, sin} of so many turns: a few at most.
inline Vec2 turned(float turns) {
    const float nearest = std::floor(4.0F * turns + 0.5F);
    const auto quarter = static_cast<int>(nearest);
    const Vec2 rest = narrow_cos_sin((turns - 0.25F * nearest) * (2.0F * kPi));
    const Vec2 upright = (quarter & 1) != 0 ? Vec2(-rest.y, rest.x) : rest;
    return (quarter & 2) != 0 ? -upright : upright;
}

}  // namespace understudy
