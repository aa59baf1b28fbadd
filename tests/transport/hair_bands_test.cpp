// Light through pale hair, filled in from four wavelengths, against the same followed at many.
#include "transport/hair_bands.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "scatter/random_stream.h"

namespace understudy {
namespace {

// What some ways through a hair leave at each wavelength, each with its share: Beer's law, lengths in radii.
struct Ways {
    std::array<float, 3> length, share;
    float left(float absorption) const {
        float sum = 0.0F;
        for (std::size_t k = 0; k < length.size(); ++k) sum += share[k] * std::exp(-length[k] * absorption);
        return sum;
    }
};

Bands booked_plainly(const Waves& waves, const Light4& light) {
    Bands bands{};
    for (std::size_t i = 0; i < kWaveCount; ++i) bands[waves.band[i]] = 4.0F * light[static_cast<glm::length_t>(i)];
    return bands;
}

// The mean over evenly spread paths, each through `hairs` hairs one after the other.
struct Means {
    Bands filled{}, plain{};
};
Means means_of(const HairPigment& pigment, int hairs) {
    const Spectrum absorption = hair_absorption(pigment);
    constexpr int kChains = 40;
    constexpr int kPaths = 128;
    Means means;
    RandomStream random(3);
    for (int chain = 0; chain < kChains; ++chain) {
        std::vector<Ways> ways;
        for (int hair = 0; hair < hairs; ++hair) {
            const Vec3 share = random.next3() + 0.05F;
            ways.push_back(
                {{0.0F, 1.0F + random.next3().x, 3.0F + random.next3().x}, {0.1F * share.x, share.y, 0.2F * share.z}});
        }
        for (int path = 0; path < kPaths; ++path) {
            const Waves waves = sample_waves((static_cast<float>(path) + 0.5F) / kPaths);
            Light4 light(1.0F);
            for (const Ways& way : ways) {
                for (glm::length_t i = 0; i < 4; ++i) {
                    light[i] *= way.left(absorption.at(waves.nm[static_cast<std::size_t>(i)]));
                }
            }
            const Bands filled = bands_through_hair(waves, light);
            const Bands plain = booked_plainly(waves, light);
            for (std::size_t b = 0; b < kBandCount; ++b) {
                means.filled[b] += filled[b];
                means.plain[b] += plain[b];
            }
        }
    }
    return means;
}

// White and blond hair, and hair nearly as dark as may be, through one hair and through eight: within 2 % of the
// brightest band.
TEST(HairBands, AreInTheMeanWhatTheWavelengthsBring) {
    for (const HairPigment& pigment : {HairPigment{0.01, 0.01}, HairPigment{0.3, 0.05}, HairPigment{0.38, 0.05}}) {
        ASSERT_TRUE(is_pale({hair_absorption(pigment)}));
        for (const int hairs : {1, 3, 8}) {
            const Means means = means_of(pigment, hairs);
            const float brightest = *std::max_element(means.plain.begin(), means.plain.end());
            for (std::size_t b = 0; b < kBandCount; ++b) {
                EXPECT_NEAR(means.filled[b], means.plain[b], 0.02F * brightest)
                    << pigment.eumelanin << " " << hairs << " " << b;
            }
        }
    }
    EXPECT_FALSE(is_pale({hair_absorption({0.7, 0.05})})) << "light brown";
}

// One way through one pigment, Beer's law: exact at the middle of every band.
TEST(HairBands, AreExactForOneWayThroughEumelanin) {
    const Spectrum absorption = hair_absorption({0.5, 0.0});
    for (const float u : {0.02F, 0.31F, 0.55F, 0.98F}) {
        const Waves waves = sample_waves(u);
        const Bands bands = bands_through_hair(waves, glm::exp(-2.0F * at(absorption, waves)));
        for (std::size_t b = 0; b < kBandCount; ++b) {
            const float nm = 0.5F * (kBandEdges[b] + kBandEdges[b + 1]);
            const float exact = std::exp(-2.0F * absorption.at(nm));
            EXPECT_NEAR(bands[b], exact, 0.003F * exact) << u << " " << b;
        }
    }
}

// One path alone is grey light: the same in all bands, where four booked fourfold are a colour.
TEST(HairBands, LeaveClearHairsLightWithoutColour) {
    const Bands bands = bands_through_hair(sample_waves(0.3F), Light4(0.7F));
    for (const float band : bands) EXPECT_NEAR(band, 0.7F, 1e-5F);
}

TEST(HairBands, KeepDarknessWhereItIs) {
    const Waves waves = sample_waves(0.6F);
    const Light4 light(0.5F, 0.0F, 0.25F, 1.0F);
    EXPECT_EQ(bands_through_hair(waves, light), booked_plainly(waves, light));
}

}  // namespace
}  // namespace understudy
