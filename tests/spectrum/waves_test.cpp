#include "spectrum/waves.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "spectrum/observer.h"

namespace understudy {
namespace {

double density(std::size_t band) {
    return 1.0 / (static_cast<double>(kBandCount) * static_cast<double>(kBandEdges[band + 1] - kBandEdges[band]));
}

TEST(Waves, LieInTheBandTheyName) {
    for (int i = 0; i < 4096; ++i) {
        const Waves waves = sample_waves((static_cast<float>(i) + 0.37F) / 4096.0F);
        for (std::size_t k = 0; k < kWaveCount; ++k) {
            EXPECT_GE(waves.nm[k], kBandEdges[waves.band[k]]);
            EXPECT_LE(waves.nm[k], kBandEdges[waves.band[k] + 1]);
        }
    }
}

TEST(Waves, ReachTheEndsOfTheRange) {
    EXPECT_EQ(sample_waves(0.0F).nm[0], kShortestWave);
    EXPECT_NEAR(sample_waves(std::nextafter(1.0F, 0.0F)).nm[0], kLongestWave, 1e-3F);
}

// Any power of two from four on, whatever u does inside its stratum: equal counts in all bands, so no colour noise on
// grey.
TEST(Waves, OfStratifiedPathsFillAllBandsEqually) {
    std::mt19937 random(7);
    std::uniform_real_distribution<float> uniform(0.0F, 0.999F);
    for (int paths = 4; paths <= 1024; paths *= 2) {
        std::array<int, kBandCount> counts{};
        for (int i = 0; i < paths; ++i) {
            const float jitter = uniform(random);
            const Waves waves = sample_waves((static_cast<float>(i) + jitter) / static_cast<float>(paths));
            for (const std::size_t band : waves.band) ++counts[band];
        }
        for (const int count : counts) EXPECT_EQ(count, paths / 4) << paths << " paths";
    }
}

// Monte Carlo with the stated density, wave by wave, gives ∫ 1 dλ = 340 nm and ∫ ȳ dλ = 106.84 nm (CIE 15:2004 table
// T.4 summed from 380 to 720 nm). A wrong density or a wave that misses part of the range shows up in both.
TEST(Waves, HaveTheStatedDensityEachByItself) {
    constexpr int kPaths = 1 << 14;
    for (std::size_t k = 0; k < kWaveCount; ++k) {
        double range = 0.0;
        double luminous = 0.0;
        for (int i = 0; i < kPaths; ++i) {
            const Waves waves = sample_waves((static_cast<float>(i) + 0.5F) / static_cast<float>(kPaths));
            range += 1.0 / density(waves.band[k]);
            luminous += static_cast<double>(observer_y().at(waves.nm[k])) / density(waves.band[k]);
        }
        EXPECT_NEAR(range / kPaths, 340.0, 1e-6);
        EXPECT_NEAR(luminous / kPaths, 106.84, 0.02);
    }
}

TEST(Waves, DensityIntegratesToOne) {
    double sum = 0.0;
    for (std::size_t band = 0; band < kBandCount; ++band) {
        sum += density(band) * static_cast<double>(kBandEdges[band + 1] - kBandEdges[band]);
    }
    EXPECT_NEAR(sum, 1.0, 1e-12);
}

}  // namespace
}  // namespace understudy
