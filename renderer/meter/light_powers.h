// How strong each light is, from what the scene file says of its power.
#pragma once

#include <vector>

#include "film/develop.h"
#include "meter/reading.h"
#include "stage/stage.h"

namespace understudy {

struct LitStudio {
    std::vector<LightPower> powers;     // one a light
    std::vector<LayerLight> layers;     // one a layer of the film: the lights, then the ambient when there is any
    std::optional<PupilReading> pupil;  // of the standing light, when it has been asked for
};

// What the head is set to, joules or lumens, is its light before the gels; what a meter reads is with them on.
//
// A light's own reading is taken at the face, the receptor flat and square to the light's centre, nobody there, with
// what panels, backdrop and walls send back of it. nobody: the stage of this studio without the sitter. A light set by
// its meter reading that sends nothing to the face is a problem.
Expected<LitStudio> set_powers(const Studio& studio, const Stage& nobody);

// What the bands of each layer count in lx·s: power times luminous weight.
std::vector<Bands> exposure_weights(const std::vector<LayerLight>& layers);

}  // namespace understudy
