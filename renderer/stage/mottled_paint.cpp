#include "stage/mottled_paint.h"

#include <algorithm>
#include <cmath>

#include "stage/gradient_noise.h"

namespace understudy {

namespace {

constexpr std::size_t kSteps = 128;

// Turned by the rotation that takes (1, 0, 0) … to the columns (2, 2, 1), (−2, 1, 2), (1, −2, 2) over 3, so that the
// lattices of two octaves never line up.
Vec3 turned(const Vec3& v) {
    return Vec3(2.0F * v.x - 2.0F * v.y + v.z, 2.0F * v.x + v.y - 2.0F * v.z, v.x + 2.0F * v.y + 2.0F * v.z) / 3.0F;
}

Spectrum between(const Spectrum& first, const Spectrum& second, float share) {
    return Spectrum::tabulate([&](float nm) { return (1.0F - share) * first.at(nm) + share * second.at(nm); });
}

}  // namespace

MottledPaint::MottledPaint(const Mottled& mottled)
    : scale_m_(static_cast<float>(mottled.scale_m)), seed_(mottled.seed * 0x9E3779B9U) {
    for (std::size_t i = 0; i <= kSteps; ++i) {
        const float share = static_cast<float>(i) / kSteps;
        tones_.emplace_back(MattSurface{between(mottled.first, mottled.second, share)});
    }
}

float MottledPaint::share_at(const Vec3& place) const {
    constexpr int kOctaves = 4;
    constexpr float kContrast = 1.1F;  // so that the blotches' middles come near the pure tones
    // Off the studio's axes: a plane of a lattice along a wall would show as stripes.
    Vec3 at = turned(place / scale_m_) + Vec3(0.37F, 0.71F, 0.13F);
    float sum = 0.0F;
    float amplitude = 1.0F;
    for (int i = 0; i < kOctaves; ++i) {
        sum += amplitude * gradient_noise(at, seed_ + static_cast<std::uint32_t>(i));
        amplitude *= 0.5F;
        at = 2.03F * turned(at);
    }
    const float t = std::clamp(0.5F + 0.5F * kContrast * sum, 0.0F, 1.0F);
    return t * t * (3.0F - 2.0F * t);
}

const Surface& MottledPaint::surface_at(const Vec3& place) const {
    return tones_[static_cast<std::size_t>(std::floor(share_at(place) * kSteps + 0.5F))];
}

}  // namespace understudy
