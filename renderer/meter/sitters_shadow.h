// The sitter's shadow on the backdrop, as far as the frame shows it.
#pragma once

#include <optional>

#include "meter/light_powers.h"
#include "meter/surroundings.h"
#include "stage/stage.h"

namespace understudy {

// A third of a stop, 1 − 2^(−1/3): the smallest step of a camera's dials, and how even a background is asked to be
// (common practice, no source).
inline constexpr double kVisibleShadow = 0.206;

struct SittersShadow {
    double share = 0.0;  // of all the light there that it takes away, at the deepest of the places looked at
    PixelBox box;        // round the places that the camera sees, thrown from the light's middle
};

// None when the picture shows no part of the backdrop that the light's middle is hidden from by the sitter. A shadow on
// the level floor is no fault and does not count.
std::optional<SittersShadow> sitters_shadow(const Studio& studio, const Stage& stage, const Stage& nobody,
                                            const LitStudio& lit, std::size_t light);

}  // namespace understudy
