// One case of an experiment, measured: only what the experiment asks for, as precisely as its words need it.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "base/expected.h"
#include "claims/lit_width.h"
#include "claims/skin_tones.h"
#include "meter/light_powers.h"
#include "meter/reading.h"
#include "setup/setup.h"

namespace understudy {

// Readings at the face point are always taken.
struct Asked {
    bool skin = false;      // readings on the skin, and the ratio between the cheeks
    bool face = false;      // pattern, shadow's edge, sheen, fall-off
    bool eyes = false;      // light in the eyes and catchlights; needs the skin's readings
    bool backdrop = false;  // its tone in the frame, and what it sends onto the sitter
    bool outline = false;   // how bright the head's edge comes out
    bool glare = false;     // what glasses mirror over the eyes
    bool tones = false;     // how bright skin and shirt come out
};

struct ClaimReading {
    Setup setup;
    LitStudio lit;
    MeterReport report;  // as far as it was asked for
    double key_distance_m = 0.0;
    LitWidth key_width;
    std::optional<SkinTones> tones;
    std::optional<double> rim_linear;  // how bright the outline's line at picture right comes out
    // With the key swung straight before the face, its height and distance kept: how far the nose's shadow goes from
    // the nose's base (0) to the upper lip (1).
    std::optional<double> to_lip_in_front;
    std::optional<double>
        lip_at_deg;  // and how high it would have to stand there to touch the lip, over the face's level
    // Of the paper's light, on a cheek's outermost part that is turned 90° from the camera, in lx·s; camera left,
    // right.
    std::array<double, 2> paper_on_edges_lxs{};
};

// Skin is taken as a surface: its colour is the same. What cannot be placed or powered is a problem.
Expected<ClaimReading> read_case(const Setup& setup, const Library& library, const Asked& asked);

}  // namespace understudy
