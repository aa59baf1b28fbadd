// How bright the iris itself is, for what lies over it to be compared with.
#pragma once

#include <vector>

#include "stage/stage.h"

namespace understudy {

// Mean luminance of the iris toward the camera, lx·s/sr, from the exposure that its plane gets as if the cornea were
// not there: ρ E / π, by what the cornea passes twice, by 1.13² for the light that it gathers and 1/n² for what a
// radiance loses from the eye's index to air. ρ: the iris's mean reflectance half way out, for light of these bands'
// colour.
double iris_luminance(const Stage& stage, const Eye& eye, const std::vector<Bands>& weights, double exposure_lxs);

}  // namespace understudy
