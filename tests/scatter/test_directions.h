// The viewing directions and the waves that the tests of surfaces use.
#pragma once

#include <array>
#include <cmath>

#include "base/geometry.h"
#include "scatter/surface.h"
#include "spectrum/waves.h"

namespace understudy {

// From straight on to grazing.
inline constexpr std::array<float, 6> kTestCosines = {1.0F, 0.9F, 0.6F, 0.3F, 0.1F, 0.01F};

inline constexpr Waves kTestWaves{{450.0F, 530.0F, 600.0F, 680.0F}, {3, 7, 11, 14}};

// An azimuth that lines up with nothing.
inline Vec3 direction_at(float cosine) {
    const float across = std::sqrt(1.0F - cosine * cosine);
    return {across * std::cos(0.77F), across * std::sin(0.77F), cosine};
}

// Of wi among samples of light that comes from wo, at the test's waves.
inline float density_of(const Surface& surface, const Vec3& wo, const Vec3& wi) {
    return scatter_value(surface, approach(surface, wo, kTestWaves), wi).density;
}

}  // namespace understudy
