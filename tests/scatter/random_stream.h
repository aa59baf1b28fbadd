// Random numbers that are the same with every compiler.
#pragma once

#include <cstdint>
#include <random>

#include "base/geometry.h"

namespace understudy {

class RandomStream {
  public:
    explicit RandomStream(std::uint32_t seed) : engine_(seed) {}

    float next() { return static_cast<float>(engine_() >> 8U) * 0x1p-24F; }

    Vec3 next3() {
        const float x = next();
        const float y = next();
        const float z = next();
        return {x, y, z};
    }

    // Even in solid angle over the upper hemisphere.
    Vec3 next_direction() {
        const float z = next();
        const float angle = 2.0F * kPi * next();
        const float across = std::sqrt(1.0F - z * z);
        return {across * std::cos(angle), across * std::sin(angle), z};
    }

  private:
    std::mt19937 engine_;
};

}  // namespace understudy
