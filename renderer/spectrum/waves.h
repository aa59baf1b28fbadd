// The four wavelengths that a path carries, and the bands that the film books them into.
//
// The bands are equally likely: the sampling density is constant inside a band and its integral over each band is
// 1/kBandCount. With four wavelengths a path, a quarter of the range apart in that measure, and four or more samples in
// powers of two, every band of a pixel gets exactly the same number of wavelengths, so even a grey card shows no colour
// noise.
#pragma once

#include <array>
#include <cstddef>

#include "spectrum/spectrum.h"

namespace understudy {

inline constexpr std::size_t kWaveCount = 4;
inline constexpr std::size_t kBandCount = 16;

// Band i reaches from kBandEdges[i] to kBandEdges[i + 1], in nm. Chosen by the test in tests/spectrum: skin of any tone
// under a spiky fluorescent stays within 1 ΔE of the full spectrum.
extern const std::array<float, kBandCount + 1> kBandEdges;

struct Waves {
    std::array<float, kWaveCount> nm;
    std::array<std::size_t, kWaveCount> band;  // of the film
};

// u in [0, 1). Wave i's density is the band density above; its value in band b is 1 / (kBandCount · width of b) per nm.
Waves sample_waves(float u);

// A mean of some quantity over each band.
using Bands = std::array<float, kBandCount>;

// Mean of a spectrum over each band.
Bands band_means(const Spectrum& spectrum);

// Integral of a spectrum over each band (unit · nm).
Bands band_integrals(const Spectrum& spectrum);

}  // namespace understudy
