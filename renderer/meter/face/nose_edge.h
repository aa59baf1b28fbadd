// How soft the key is, as a length: the width of the edge of the nose's shadow, from where nothing of the light's front
// can be seen to where all of it can.
#pragma once

#include <optional>
#include <vector>

#include "meter/face/face_shades.h"

namespace understudy {

// Metres along the skin, the median of some places in that third of the shadow's edge that lies farthest from the nose:
// close to what throws it, any shadow is sharp. shades: of the light's middle. None where the
// nose throws no shadow beside itself. Where the nose is too small to hide the whole front, the width is what the part
// of the edge that there is would make if it went on alike.
std::optional<double> nose_edge(const Stage& stage, const FaceView& view, const std::vector<Shade>& shades,
                                const Emitter& light);

}  // namespace understudy
