#include "sitter/wardrobe/folds.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace understudy {
namespace {

std::uint32_t hashed(std::int64_t x, std::int64_t y, std::int64_t z, unsigned seed) {
    std::uint64_t h = static_cast<std::uint64_t>(x) * 0x9E3779B97F4A7C15ULL;
    h ^= static_cast<std::uint64_t>(y) * 0xC2B2AE3D27D4EB4FULL + (h << 6U) + (h >> 2U);
    h ^= static_cast<std::uint64_t>(z) * 0x165667B19E3779F9ULL + (h << 6U) + (h >> 2U);
    h ^= seed * 0x27D4EB2F165667C5ULL;
    h ^= h >> 33U;
    h *= 0xFF51AFD7ED558CCDULL;
    h ^= h >> 33U;
    return static_cast<std::uint32_t>(h);
}

// One of the ways from a cube's middle to its edges' middles, as Perlin has them.
Double3 way_at(const Double3& corner, unsigned seed) {
    const auto whole = [](double place) { return static_cast<std::int64_t>(place); };
    const std::uint32_t h = hashed(whole(corner.x), whole(corner.y), whole(corner.z), seed) % 12U;
    Double3 way(0.0);
    way[h < 8U ? 0 : 1] = (h & 1U) != 0U ? -1.0 : 1.0;
    way[h < 4U ? 1 : 2] = (h & 2U) != 0U ? -1.0 : 1.0;
    return way;
}

double fade(double t) { return t * t * t * (t * (t * 6.0 - 15.0) + 10.0); }
double slope_of_fade(double t) { return 30.0 * t * t * (t - 1.0) * (t - 1.0); }

// Sharp crests, wide troughs: cloth gathers in ridges.
double ridged(double noise) { return 1.0 - 2.2 * std::abs(noise); }

}  // namespace

SlopedNoise sloped_gradient_noise(const Double3& place, unsigned seed) {
    const Double3 low = glm::floor(place);
    const Double3 in = place - low;
    const Double3 share(fade(in.x), fade(in.y), fade(in.z));
    const Double3 rise(slope_of_fade(in.x), slope_of_fade(in.y), slope_of_fade(in.z));
    SlopedNoise sum;
    for (int k = 0; k < 8; ++k) {
        const Double3 step(k & 1, (k >> 1) & 1, (k >> 2) & 1);
        const Double3 weights = glm::mix(1.0 - share, share, step);
        const Double3 slopes = glm::mix(-rise, rise, step);
        const double weight = weights.x * weights.y * weights.z;
        const Double3 way = way_at(low + step, seed);
        const double product = glm::dot(way, in - step);
        sum.noise += weight * product;
        sum.slope +=
            weight * way + product * Double3(slopes.x * weights.y * weights.z, weights.x * slopes.y * weights.z,
                                             weights.x * weights.y * slopes.z);
    }
    return sum;
}

double gradient_noise(const Double3& place, unsigned seed) { return sloped_gradient_noise(place, seed).noise; }

double fold_height(const SheetPoint& point, const BonePivots& pivots, double fold_length_m, unsigned seed) {
    const Double3& p = point.skin;
    const double arm = static_cast<double>(point.weights[kLeftArm]) + static_cast<double>(point.weights[kRightArm]);
    const Double3 shoulder = p.x < 0.0 ? pivots[kRightArm] : pivots[kLeftArm];
    // Pipes down the trunk: four times as long as they are apart, and a little astray.
    const double apart = 0.25 * fold_length_m;
    const Double3 astray = 0.5 * Double3(gradient_noise(9.0 * p, seed + 1U), 0.0, gradient_noise(9.0 * p, seed + 2U));
    const Double3 along(p.x / apart, p.y / fold_length_m, p.z / apart);
    const double pipes = ridged(gradient_noise(along + astray, seed));
    const double below = smooth_step((shoulder.y - 0.02 - p.y) / 0.16);
    // Drag lines that fan out from the armpit over chest and back.
    const Double3 armpit = shoulder + Double3(p.x < 0.0 ? 0.012 : -0.012, -0.085, 0.0);
    const double reach = std::hypot(p.x - armpit.x, p.y - armpit.y);
    const double angle = std::atan2(p.y - armpit.y, std::abs(armpit.x) - std::abs(p.x));
    const double fan = ridged(gradient_noise({4.2 * angle, 6.0 * reach, p.z > 0.0 ? 11.3 : 5.7}, seed + 3U));
    const double drag = std::exp(-reach / 0.075) * smooth_step((reach - 0.015) / 0.05);
    // Wrinkles across the arm.
    const double round = ridged(gradient_noise({22.0 * p.x, 34.0 * p.y, 22.0 * p.z}, seed + 4U));
    const double sleeve = smooth_step(2.0 * arm - 0.4);
    return (1.0 - sleeve) * (0.8 * below * pipes + 0.7 * drag * fan) + 0.7 * sleeve * round;
}

}  // namespace understudy
