// Denoising by the trained network.
#pragma once

#include "denoise/features.h"
#include "denoise/network.h"

namespace understudy {

// Pictures with more pixels are worked on in tiles that overlap by the network's reach, with the same result: a
// megapixel takes half a gigabyte.
inline constexpr int kLargestTile = 1024;

// The picture's own exposure is the network's scale: 1 is a matt white card in the metered light. (A scale by the
// picture's brightness would change all of it when one light is dimmed.) Takes networks of 3 channels (light), 6 (and
// albedo) or 9 (and normals). Pixels that are no number stay so.
Picture denoise_learned(const Network& network, const Picture& picture, const Features& features,
                        int largest_tile = kLargestTile);

}  // namespace understudy
