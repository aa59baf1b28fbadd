// Four numbers side by side, one for each of a path's wavelengths.
#pragma once

#include <array>
#include <cstdint>

#include <glm/vec4.hpp>

namespace understudy {

using Four = float __attribute__((vector_size(16)));
// What comparing gives: all bits set where it is true.
using FourTruth = std::int32_t __attribute__((vector_size(16)));

inline Four four_of(const glm::vec4& v) { return Four{v.x, v.y, v.z, v.w}; }
inline glm::vec4 vec4_of(const Four& v) { return {v[0], v[1], v[2], v[3]}; }
inline Four all_four(float value) { return Four{value, value, value, value}; }

inline float sum_of(const Four& v) { return (v[0] + v[1]) + (v[2] + v[3]); }
inline float largest_of(const Four& v) {
    const float a = v[0] > v[1] ? v[0] : v[1];
    const float b = v[2] > v[3] ? v[2] : v[3];
    return a > b ? a : b;
}

inline float least_of(const Four& v) {
    const float a = v[0] < v[1] ? v[0] : v[1];
    const float b = v[2] < v[3] ? v[2] : v[3];
    return a < b ? a : b;
}

// The nearest whole number to each, of any smaller than 2^22: adding 1.5 · 2^23 rounds to it.
inline Four nearest_whole(const Four& x) {
    const Four shift = all_four(12582912.0F);
    return (x + shift) - shift;
}

// e^x for x in [−80, 80], to 2e-7 of the value: x = n ln 2 + r, e^r by its series up to r⁶ on |r| <= ln 2 / 2, and 2^n
// put straight into the exponent's bits. What is smaller than −80 counts as −80.
inline Four exponential(const Four& x) {
    using Bits = std::int32_t __attribute__((vector_size(16)));
    const Four least = all_four(-80.0F);
    const Four bounded = x < least ? least : x;
    const Four whole = nearest_whole(bounded * 1.44269504F);
    const Four rest = (bounded - whole * 0.693359375F) + whole * 2.12194440e-4F;
    constexpr std::array<float, 6> kFactors = {1.0F / 120.0F, 1.0F / 24.0F, 1.0F / 6.0F, 0.5F, 1.0F, 1.0F};
    Four series = all_four(1.0F / 720.0F);
    for (const float factor : kFactors) series = series * rest + factor;
    const Bits exponent = __builtin_convertvector(whole, Bits) + 127;
    return series * reinterpret_cast<Four>(exponent << 23);
}

}  // namespace understudy
