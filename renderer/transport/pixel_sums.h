// What the paths of one pixel bring to the film in one pass.
#pragma once

#include <array>
#include <cmath>

#include "transport/camera_path.h"
#include "transport/film.h"
#include "transport/hair_bands.h"

namespace understudy {

// What a pass adds to one pixel.
struct PixelSums {
    explicit PixelSums(std::size_t layer_count) : count(layer_count) {
        for (std::size_t l = 0; l < count; ++l) {
            layers[l] = Bands{};
            glints[l] = 0.0F;
        }
    }
    std::size_t count;
    std::array<Bands, kMaxLayers> layers;  // the first count are set
    std::array<float, kMaxLayers> glints;  // these as well
    Bands albedo{};
    Vec3 normal{0.0F};
    double depth = 0.0;
    int seen = 0;  // samples that met something
    // How bright every other path was in the picture that is wanted.
    std::array<double, 2> halves{};
    int paths = 0;
};

// Of a path, by how far both halves of a pixel's paths lie apart: over the squared light, the darkest counting as a
// tenth of white.
inline double noise_of(const PixelSums& sums) {
    const double mean = (sums.halves[0] + sums.halves[1]) / sums.paths;
    const double apart = (sums.halves[0] - sums.halves[1]) / sums.paths;
    return sums.paths * apart * apart / (mean * mean + 0.01);
}

// Every wavelength stands for its band: kBandCount bands, kWaveCount wavelengths a path.
inline void book_bands(Bands& bands, const Waves& waves, const Light4& light) {
    constexpr float kShare = static_cast<float>(kBandCount) / static_cast<float>(kWaveCount);
    for (std::size_t i = 0; i < kWaveCount; ++i) bands[waves.band[i]] += kShare * light[static_cast<glm::length_t>(i)];
}

inline void book_hair(Bands& bands, const Waves& waves, const Light4& light) {
    if (light == Light4(0.0F)) return;
    const Bands all = bands_through_hair(waves, light);
    for (std::size_t b = 0; b < kBandCount; ++b) bands[b] += all[b];
}

inline void book_glint(Bands& bands, float glint) {
    for (float& band : bands) band += glint;
}

inline bool finite(const PathLight& light, std::size_t layers) {
    for (std::size_t i = 0; i < layers; ++i) {
        const Light4& l = light.layers[i];
        if (!std::isfinite(l.x + l.y + l.z + l.w)) return false;
    }
    return true;
}

}  // namespace understudy
