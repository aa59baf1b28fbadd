// Where cloth folds: drag lines from the armpits, soft pipes down the trunk, wrinkles round the arms. Reasoned from how
// garments hang, not measured.
#pragma once

#include "sitter/skeleton.h"
#include "sitter/wardrobe/sheet.h"

namespace understudy {

// Gradient noise in [-1, 1] or a little less, period none. Perlin, "Improving Noise", SIGGRAPH 2002; the gradients are
// hashed.
double gradient_noise(const Double3& place, unsigned seed);

// The same with its slope, for each unit along each axis.
struct SlopedNoise {
    double noise = 0.0;
    Double3 slope{0.0};
};
SlopedNoise sloped_gradient_noise(const Double3& place, unsigned seed);

// Outward, in shares of the folds' depth, about -1 … 1.
double fold_height(const SheetPoint& point, const BonePivots& pivots, double fold_length_m, unsigned seed);

}  // namespace understudy
