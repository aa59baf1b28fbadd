// How bright places of the sitter come out in the picture.
#pragma once

#include <optional>

#include "meter/light_powers.h"
#include "meter/reading.h"
#include "stage/stage.h"

namespace understudy {

// Luminance in linear light, 1 = a matt white in the light that the picture is exposed for.
struct SkinTones {
    double lit_cheek = 0.0;
    double shadow_cheek = 0.0;
    double forehead = 0.0;  // the brightest place of it that was looked at
};

// None for a sitter without cheeks. readings: with the face's and the cheeks'.
std::optional<SkinTones> skin_tones(const Studio& studio, const Stage& stage, const LitStudio& lit,
                                    const std::vector<Reading>& readings);

// The bright line along the head's outline at picture right, in the same unit: the mean of its three brightest places.
// NaN where too little of the outline is in the frame.
double rim_line(const Studio& studio, const Stage& stage, const LitStudio& lit, const std::vector<Reading>& readings,
                const Outline& outline);

}  // namespace understudy
