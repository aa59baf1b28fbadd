// What a path carries at its four wavelengths.
#pragma once

#include <glm/vec4.hpp>

#include "spectrum/spectrum.h"
#include "spectrum/waves.h"

namespace understudy {

using Light4 = glm::vec4;

inline Light4 at(const Spectrum& spectrum, const Waves& waves) {
    return {spectrum.at(waves.nm[0]), spectrum.at(waves.nm[1]), spectrum.at(waves.nm[2]), spectrum.at(waves.nm[3])};
}

// Over the range that paths carry.
inline float mean_over_waves(const Spectrum& spectrum) {
    const double range = static_cast<double>(kLongestWave) - static_cast<double>(kShortestWave);
    return static_cast<float>(integral(spectrum) / range);
}

}  // namespace understudy
