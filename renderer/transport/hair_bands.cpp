#include "transport/hair_bands.h"

#include <algorithm>
#include <cmath>

namespace understudy {

namespace {

constexpr float kEumelaninPower = -3.33F;
constexpr std::size_t kSpacing = kBandCount / kWaveCount;

// 1 at 550 nm.
float absorption_at(float nm) { return std::pow(nm / 550.0F, kEumelaninPower); }

const Bands& absorption_of_bands() {
    static const Bands middles = [] {
        Bands result{};
        for (std::size_t b = 0; b < kBandCount; ++b) {
            result[b] = absorption_at(0.5F * (kBandEdges[b] + kBandEdges[b + 1]));
        }
        return result;
    }();
    return middles;
}

// Waves and light from blue to red: the waves' bands lie evenly apart and may begin with any of the four.
struct InOrder {
    InOrder(const Waves& waves, const Light4& light) {
        const auto first = std::min_element(waves.band.begin(), waves.band.end()) - waves.band.begin();
        for (std::size_t i = 0; i < kWaveCount; ++i) {
            const std::size_t wave = (static_cast<std::size_t>(first) + i) % kWaveCount;
            place[i] = absorption_at(waves.nm[wave]);
            strength[i] = std::log(light[static_cast<glm::length_t>(wave)]);
        }
        lowest = waves.band[static_cast<std::size_t>(first)];
    }
    float at(std::size_t band) const {
        const std::size_t beyond = band < lowest ? 0 : (band - lowest) / kSpacing;
        const std::size_t i = std::min(beyond, kWaveCount - 2);
        const float share = (absorption_of_bands()[band] - place[i]) / (place[i + 1] - place[i]);
        return std::exp(strength[i] + share * (strength[i + 1] - strength[i]));
    }

    std::array<float, kWaveCount> place{};
    std::array<float, kWaveCount> strength{};
    std::size_t lowest = 0;
};

}  // namespace

Bands bands_through_hair(const Waves& waves, const Light4& light) {
    Bands bands{};
    if (std::min({light.x, light.y, light.z, light.w}) > 0.0F) {
        const InOrder ordered(waves, light);
        for (std::size_t b = 0; b < kBandCount; ++b) bands[b] = ordered.at(b);
        return bands;
    }
    for (std::size_t i = 0; i < kWaveCount; ++i) {
        bands[waves.band[i]] = static_cast<float>(kSpacing) * light[static_cast<glm::length_t>(i)];
    }
    return bands;
}

}  // namespace understudy
