// Every catchlight of both eyes, found by solving the reflection on the cornea and not by looking at pixels.
#pragma once

#include <vector>

#include "meter/light_powers.h"
#include "meter/reading.h"
#include "stage/camera.h"
#include "stage/stage.h"

namespace understudy {

// A panel counts as a catchlight when its mean luminance toward the eye is at least this share of the brightest
// light's; a cloth that light goes through counts from a hundredth of that.
inline constexpr double kFaintestPanel = 0.01;

// So many places of a light are looked for in the eye, and so many make do for a search.
inline constexpr int kMirroredPlaces = 576;
inline constexpr int kRoughlyMirrored = 144;

// eyes: their readings, which tell how bright the irises are; where there are none, stops_over_iris is left at 0.
std::vector<Catchlight> find_catchlights(const Studio& studio, const Stage& stage, const LitStudio& lit,
                                         const std::vector<EyeReading>& eyes = {}, int places = kMirroredPlaces);

}  // namespace understudy
