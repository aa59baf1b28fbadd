#include "stage/gradient_noise.h"

#include <array>
#include <cmath>

namespace understudy {

namespace {

std::array<std::uint32_t, 3> pcg3d(std::uint32_t x, std::uint32_t y, std::uint32_t z) {
    constexpr std::uint32_t kFactor = 1664525U;
    constexpr std::uint32_t kTerm = 1013904223U;
    x = x * kFactor + kTerm;
    y = y * kFactor + kTerm;
    z = z * kFactor + kTerm;
    x += y * z;
    y += z * x;
    z += x * y;
    x ^= x >> 16U;
    y ^= y >> 16U;
    z ^= z >> 16U;
    x += y * z;
    y += z * x;
    z += x * y;
    return {x, y, z};
}

// One of the ways from a cube's middle to its edges' middles, as Perlin has them: no way is favoured along the axes.
float gradient_product(const std::array<std::int32_t, 3>& corner, std::uint32_t seed, const Vec3& away) {
    constexpr std::array<std::array<std::int8_t, 3>, 12> kWays = {{{1, 1, 0},
                                                                   {-1, 1, 0},
                                                                   {1, -1, 0},
                                                                   {-1, -1, 0},
                                                                   {1, 0, 1},
                                                                   {-1, 0, 1},
                                                                   {1, 0, -1},
                                                                   {-1, 0, -1},
                                                                   {0, 1, 1},
                                                                   {0, -1, 1},
                                                                   {0, 1, -1},
                                                                   {0, -1, -1}}};
    const auto hash = pcg3d(static_cast<std::uint32_t>(corner[0]) ^ seed, static_cast<std::uint32_t>(corner[1]),
                            static_cast<std::uint32_t>(corner[2]));
    const auto& way = kWays[(hash[0] >> 8U) % kWays.size()];
    return static_cast<float>(way[0]) * away.x + static_cast<float>(way[1]) * away.y +
           static_cast<float>(way[2]) * away.z;
}

float fade(float t) { return t * t * t * (t * (t * 6.0F - 15.0F) + 10.0F); }

}  // namespace

float gradient_noise(const Vec3& place, std::uint32_t seed) {
    std::array<std::int32_t, 3> cell{};
    Vec3 in(0.0F);
    for (glm::length_t i = 0; i < 3; ++i) {
        const float whole = std::floor(place[i]);
        cell[static_cast<std::size_t>(i)] = static_cast<std::int32_t>(whole);
        in[i] = place[i] - whole;
    }
    float sum = 0.0F;
    for (std::int32_t corner = 0; corner < 8; ++corner) {
        const std::array<std::int32_t, 3> step = {corner & 1, (corner >> 1) & 1, corner >> 2};
        float weight = 1.0F;
        Vec3 away(0.0F);
        for (std::size_t i = 0; i < 3; ++i) {
            const float t = in[static_cast<glm::length_t>(i)];
            weight *= step[i] == 1 ? fade(t) : 1.0F - fade(t);
            away[static_cast<glm::length_t>(i)] = t - static_cast<float>(step[i]);
        }
        sum += weight * gradient_product({cell[0] + step[0], cell[1] + step[1], cell[2] + step[2]}, seed, away);
    }
    return sum;
}

}  // namespace understudy
