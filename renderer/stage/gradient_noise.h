// Smooth chance over space, the same for ever for a seed.
#pragma once

#include <cstdint>

#include "base/geometry.h"

namespace understudy {

// About −1 … 1, on average 0, over a lattice of whole numbers with hashed gradients that never repeat: K. Perlin,
// "Improving Noise", SIGGRAPH 2002 (the fade 6t⁵ − 15t⁴ + 10t³); the hash is pcg3d of Jarzynski and Olano, "Hash
// Functions for GPU Rendering", JCGT 9(3), 2020.
float gradient_noise(const Vec3& place, std::uint32_t seed);

}  // namespace understudy
