// Whether a second light shows a shadow of the nose of its own: the trade's test of a fill.
#pragma once

#include <vector>

#include "meter/face/face_reading.h"
#include "meter/face/face_view.h"
#include "meter/light_powers.h"

namespace understudy {

// A step of this much shows; a sixth of a stop is what metering lets pass. Common practice, no source.
inline constexpr double kShowingStops = 1.0 / 6.0;

// Of every light but the first that the nose stands in the way of, as the camera sees it: how much lighter the darkest
// of some places of that shadow would be without the nose.
std::vector<FillShadow> fill_shadows(const Studio& studio, const Stage& stage, const Stage& nobody,
                                     const FaceView& view, const LitStudio& lit);

}  // namespace understudy
