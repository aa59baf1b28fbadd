// Denoising without trained weights: a filter with holes that halves what it passes over again and again, held back by
// edges of what is there (Dammertz and others, "Edge-avoiding à-trous wavelet transform for fast global illumination
// filtering", 2010). Light is divided by albedo first, so that texture is left as sharp as it is.
#pragma once

#include "denoise/features.h"

namespace understudy {

// samples: paths a pixel, which say how far apart two pixels' light may be by noise alone. Pixels that are no number
// stay so and count for nothing.
Picture denoise_a_trous(const Picture& picture, const Features& features, int samples);

}  // namespace understudy
