// What one path brings back, light by light.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

#include "scatter/light4.h"

namespace understudy {

// Fifteen lights and the ambient.
inline constexpr std::size_t kMaxLayers = 16;

// For each layer, at the path's four wavelengths: what comes back of that light at unit power, were it of equal energy
// at every wavelength.
struct PathLight {
    std::array<Light4, kMaxLayers> layers{};
    std::uint32_t rays = 0;  // traced for it
};

}  // namespace understudy
