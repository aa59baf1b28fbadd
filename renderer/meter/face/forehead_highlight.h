// The key's sheen on the forehead: how strong, how large. The military manuals set a key's distance by it.
#pragma once

#include <optional>

#include "meter/face/face_reading.h"
#include "meter/face/face_view.h"

namespace understudy {

// weights: the key's bands as they count for luminance. None where the camera sees no forehead, or the light does not
// reach it.
std::optional<ForeheadHighlight> forehead_highlight(const Stage& stage, const FaceView& view, const Emitter& key,
                                                    const Bands& weights);

}  // namespace understudy
