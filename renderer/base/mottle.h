// Smooth random bumps over space: the same at the same place, and nowhere repeated.
#pragma once

#include <array>
#include <cmath>
#include <cstdint>

#include "base/geometry.h"

namespace understudy {

// Wellons's lowbias32 over a cell's three numbers.
inline std::uint32_t cell_bits(int x, int y, int z) {
    std::uint32_t bits = static_cast<std::uint32_t>(x) * 0x8da6b343U ^ static_cast<std::uint32_t>(y) * 0xd8163841U ^
                         static_cast<std::uint32_t>(z) * 0xcb1ab31fU;
    bits ^= bits >> 16;
    bits *= 0x7feb352dU;
    bits ^= bits >> 15;
    bits *= 0x846ca68bU;
    bits ^= bits >> 16;
    return bits;
}

// Gradient noise with cells of one unit: about −1 … 1, mean 0. K. Perlin, "Improving Noise", SIGGRAPH 2002.
inline float mottle_at(const Vec3& place) {
    const Vec3 cell(std::floor(place.x), std::floor(place.y), std::floor(place.z));
    const Vec3 on = place - cell;
    const auto fade = [](float t) { return t * t * t * (t * (6.0F * t - 15.0F) + 10.0F); };
    const Vec3 share(fade(on.x), fade(on.y), fade(on.z));
    std::array<float, 8> slopes{};
    for (unsigned k = 0; k < 8; ++k) {
        const Vec3 corner(static_cast<float>(k & 1U), static_cast<float>((k >> 1U) & 1U), static_cast<float>(k >> 2U));
        const Vec3 at = cell + corner;
        const std::uint32_t bits = cell_bits(static_cast<int>(at.x), static_cast<int>(at.y), static_cast<int>(at.z));
        const auto part = [](std::uint32_t b) { return static_cast<float>(b & 1023U) * (2.0F / 1023.0F) - 1.0F; };
        const Vec3 slope(part(bits), part(bits >> 10U), part(bits >> 20U));
        slopes[k] = glm::dot(slope, on - corner);
    }
    const auto mix = [](float a, float b, float t) { return a + t * (b - a); };
    const float front = mix(mix(slopes[0], slopes[1], share.x), mix(slopes[2], slopes[3], share.x), share.y);
    const float back = mix(mix(slopes[4], slopes[5], share.x), mix(slopes[6], slopes[7], share.x), share.y);
    return 1.2F * mix(front, back, share.z);
}

}  // namespace understudy
