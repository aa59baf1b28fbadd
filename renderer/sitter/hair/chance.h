// Numbers that look random and are the same every time: keyed by what they are for.
#pragma once

#include <cmath>
#include <cstdint>

#include "base/geometry.h"

namespace understudy {

// A permutation of 32 bits: Jarzynski and Olano, "Hash Functions for GPU Rendering", JCGT 9(3), 2020 (pcg).
inline std::uint32_t scrambled(std::uint32_t key) {
    const std::uint32_t state = key * 747796405U + 2891336453U;
    const std::uint32_t word = ((state >> ((state >> 28U) + 4U)) ^ state) * 277803737U;
    return (word >> 22U) ^ word;
}

// In [0, 1), for the k-th use of a thing's number.
inline float chance(std::uint32_t thing, std::uint32_t use) {
    return static_cast<float>(scrambled(thing ^ scrambled(use * 0x9e3779b9U + 0x7f4a7c15U)) >> 8U) * 0x1p-24F;
}

// In [−1, 1).
inline float swing(std::uint32_t thing, std::uint32_t use) { return 2.0F * chance(thing, use) - 1.0F; }

inline Vec3 swing3(std::uint32_t thing, std::uint32_t use) {
    return {swing(thing, use), swing(thing, use + 1), swing(thing, use + 2)};
}

inline float smooth(float from, float to, float x) {
    const float t = x <= from ? 0.0F : (x >= to ? 1.0F : (x - from) / (to - from));
    return t * t * (3.0F - 2.0F * t);
}

// A slow wandering in [−1, 1] or so, smooth in place; wavelength in metres.
inline float wander(const Vec3& place, float wavelength, std::uint32_t key) {
    const Vec3 q = place * (6.2831853F / wavelength);
    const float a = 6.2831853F * chance(key, 1);
    const float b = 6.2831853F * chance(key, 2);
    const float c = 6.2831853F * chance(key, 3);
    return (std::sin(q.x + 1.7F * q.y + a) + std::sin(1.3F * q.y - 0.8F * q.z + b) + std::sin(q.z + 0.6F * q.x + c)) /
           3.0F;
}

}  // namespace understudy
