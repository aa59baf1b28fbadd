// What has to hold for every surface: energy, reciprocity, and samples that agree with values and densities.
#include "scatter/surface.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include <gtest/gtest.h>

#include "scatter/random_stream.h"
#include "scatter/registry.h"
#include "scatter/test_directions.h"

namespace understudy {
namespace {

// How far the tables of directional albedo are from the integrals they stand for, at most; the worst found with a finer
// rule is 0.0003.
constexpr double kTableTolerance = 0.0005;

struct Estimate {
    std::array<double, 4> mean{};
    std::array<double, 4> error{};  // standard error
};

// The mean weight of the samples that `draw` makes from random numbers; none counts as 0.
template <class Draw>
Estimate mean_weight(int count, std::uint32_t seed, const Draw& draw) {
    RandomStream random(seed);
    std::array<double, 4> sum{};
    std::array<double, 4> squares{};
    for (int i = 0; i < count; ++i) {
        const std::optional<ScatterSample> sample = draw(random);
        if (!sample) continue;
        for (std::size_t c = 0; c < 4; ++c) {
            const auto weight = static_cast<double>(sample->weight[static_cast<int>(c)]);
            sum[c] += weight;
            squares[c] += weight * weight;
        }
    }
    Estimate result;
    for (std::size_t c = 0; c < 4; ++c) {
        result.mean[c] = sum[c] / count;
        const double variance = squares[c] / count - result.mean[c] * result.mean[c];
        result.error[c] = std::sqrt(std::max(0.0, variance) / count);
    }
    return result;
}

TEST(EverySurface, CoversEveryKind) {
    std::set<std::size_t> kinds;
    for (const NamedSurface& named : every_surface()) kinds.insert(named.surface.index());
    EXPECT_EQ(kinds.size(), std::variant_size_v<Surface>);
}

TEST(EverySurface, ReturnsNoMoreThanItGetsAndAllOfItWhenWhite) {
    std::uint32_t seed = 500;
    for (const NamedSurface& named : every_surface()) {
        for (const float cosine : kTestCosines) {
            const Vec3 wo = direction_at(cosine);
            const Estimate estimate = mean_weight(100000, ++seed, [&](RandomStream& random) {
                const Vec3 u = random.next3();
                return sample_scatter(named.surface, wo, kTestWaves, u);
            });
            for (std::size_t c = 0; c < 4; ++c) {
                const double allowed = 3.0 * estimate.error[c] + kTableTolerance;
                EXPECT_LE(estimate.mean[c], 1.0 + allowed) << named.name << " at cosine " << cosine;
                if (named.white) {
                    EXPECT_GE(estimate.mean[c], 1.0 - allowed) << named.name << " at cosine " << cosine;
                }
            }
        }
    }
}

// The denoiser's colour is the albedo under even light. A metal takes its Fresnel term at the mean: a wider limit.
TEST(EverySurface, StatesItsAlbedo) {
    std::uint32_t seed = 900;
    for (const NamedSurface& named : every_surface()) {
        const Estimate estimate = mean_weight(200000, ++seed, [&](RandomStream& random) {
            const float a = random.next();
            const float b = random.next();
            const Vec3 u = random.next3();
            return sample_scatter(named.surface, sample_cosine(a, b), kTestWaves, u);
        });
        const Light4 stated = albedo(named.surface, kTestWaves);
        const double limit = std::holds_alternative<RoughMetal>(named.surface) ? 0.02 : kTableTolerance;
        for (std::size_t c = 0; c < 4; ++c) {
            EXPECT_NEAR(static_cast<double>(stated[static_cast<int>(c)]), estimate.mean[c],
                        3.0 * estimate.error[c] + limit)
                << named.name;
        }
    }
}

TEST(EverySurface, WeighsSamplesByValueCosineAndDensity) {
    RandomStream random(7);
    for (const NamedSurface& named : every_surface()) {
        int drawn = 0;
        for (int i = 0; i < 5000; ++i) {
            const Vec3 wo = random.next_direction();
            const Vec3 u = random.next3();
            if (wo.z <= 0.0F) continue;
            const auto sample = sample_scatter(named.surface, wo, kTestWaves, u);
            if (!sample) continue;
            ++drawn;
            if (sample->delta) {
                // Straight on: sampled as often as the rest would leave it, and weighed to be the open share.
                ASSERT_GT(open_share(named.surface), 0.0F) << named.name;
                ASSERT_EQ(sample->wi, -wo) << named.name;
                continue;
            }
            ASSERT_TRUE(sample->wi.z > 0.0F || transmits(named.surface)) << named.name;
            ASSERT_NEAR(glm::length(sample->wi), 1.0F, 1e-5F);
            const float density = density_of(named.surface, wo, sample->wi);
            EXPECT_NEAR(sample->density / density, 1.0F, 1e-4F) << named.name;
            const Light4 expected =
                evaluate_scatter(named.surface, wo, sample->wi, kTestWaves) * std::abs(sample->wi.z) / density;
            for (int c = 0; c < 4; ++c) {
                EXPECT_NEAR(sample->weight[c], expected[c], 1e-4F * expected[c] + 1e-7F) << named.name;
            }
        }
        EXPECT_GT(drawn, 2000) << named.name;
    }
}

TEST(EverySurface, IsReciprocal) {
    RandomStream random(11);
    for (const NamedSurface& named : every_surface()) {
        for (int i = 0; i < 5000; ++i) {
            const Vec3 a = random.next_direction();
            const Vec3 b = random.next_direction();
            const Light4 one = evaluate_scatter(named.surface, a, b, kTestWaves);
            const Light4 other = evaluate_scatter(named.surface, b, a, kTestWaves);
            for (int c = 0; c < 4; ++c) EXPECT_NEAR(one[c], other[c], 1e-4F * one[c]) << named.name;
            if (!transmits(named.surface)) continue;
            const Vec3 beyond(b.x, b.y, -b.z);
            const Light4 through = evaluate_scatter(named.surface, a, beyond, kTestWaves);
            const Light4 back = evaluate_scatter(named.surface, beyond, a, kTestWaves);
            for (int c = 0; c < 4; ++c) EXPECT_NEAR(through[c], back[c], 1e-4F * through[c]) << named.name;
        }
    }
}

TEST(EverySurface, IsFiniteAtTheHorizonAndBlackBelowIt) {
    const Vec3 above = direction_at(0.4F);
    const Vec3 below(above.x, above.y, -above.z);
    RandomStream random(13);
    for (const NamedSurface& named : every_surface()) {
        const Vec3 half = random.next3();
        if (!transmits(named.surface)) {
            for (const auto& [wo, wi] : {std::pair(above, below), std::pair(below, above), std::pair(below, below)}) {
                EXPECT_EQ(evaluate_scatter(named.surface, wo, wi, kTestWaves), Light4(0.0F)) << named.name;
                EXPECT_EQ(density_of(named.surface, wo, wi), 0.0F) << named.name;
            }
            EXPECT_FALSE(sample_scatter(named.surface, below, kTestWaves, half)) << named.name;
        }
        for (const float cosine : {0.0F, 1e-30F, 1e-7F, 1e-4F}) {
            const Vec3 wo(std::sqrt(1.0F - cosine * cosine), 0.0F, cosine);
            for (const Vec3& wi : {wo, Vec3(-wo.x, 0.0F, cosine), Vec3(0.0F, 1.0F, 0.0F), Vec3(0.0F, 0.0F, 1.0F)}) {
                const ScatterValue both = scatter_value(named.surface, wo, wi, kTestWaves);
                EXPECT_TRUE(std::isfinite(both.density) && std::isfinite(both.value.x + both.value.w)) << named.name;
            }
            for (int i = 0; i < 200; ++i) {
                const Vec3 u = random.next3();
                const auto sample = sample_scatter(named.surface, wo, kTestWaves, u);
                if (!sample) continue;
                EXPECT_TRUE(std::isfinite(sample->weight.x + sample->weight.w)) << named.name << " " << cosine;
                EXPECT_TRUE(sample->delta || sample->density > 0.0F) << named.name << " " << cosine;
            }
        }
    }
}

// The corners of the unit cube of random numbers.
TEST(EverySurface, TakesTheExtremesOfItsRandomNumbers) {
    constexpr float kMost = 1.0F - 0x1p-24F;
    for (const NamedSurface& named : every_surface()) {
        for (const float cosine : kTestCosines) {
            for (int corner = 0; corner < 8; ++corner) {
                const Vec3 u((corner & 1) != 0 ? kMost : 0.0F, (corner & 2) != 0 ? kMost : 0.0F,
                             (corner & 4) != 0 ? kMost : 0.0F);
                const auto sample = sample_scatter(named.surface, direction_at(cosine), kTestWaves, u);
                if (!sample) continue;
                EXPECT_TRUE(std::isfinite(sample->weight.x + sample->weight.w)) << named.name;
                EXPECT_TRUE(std::isfinite(sample->density)) << named.name;
            }
        }
    }
}

// What a cloth lets through is what falls on it less what it scatters back and what it takes: shares by definition,
// whatever the light's angle, on either side.
TEST(ThinCloth, SharesTheLightAsItSays) {
    const ThinCloth cloth(Spectrum(0.25F), Spectrum(0.45F), 0.2F);
    RandomStream random(17);
    constexpr int kCount = 100000;
    for (const float side : {1.0F, -1.0F}) {
        const Vec3 wo = side * direction_at(0.3F);
        double back = 0.0;
        double through = 0.0;
        double open = 0.0;
        for (int i = 0; i < kCount; ++i) {
            const Vec3 u = random.next3();
            const auto sample = sample_scatter(cloth, approach(cloth, wo, kTestWaves), u);
            ASSERT_TRUE(sample);
            double& share = sample->delta ? open : sample->wi.z * wo.z > 0.0F ? back : through;
            share += static_cast<double>(sample->weight.x) / kCount;
        }
        // Each is a share p of samples with the weight 0.9: three standard errors of 0.9 √(p (1 − p) / n).
        EXPECT_NEAR(back, 0.25, 0.0040);
        EXPECT_NEAR(through, 0.45, 0.0043);
        EXPECT_NEAR(open, 0.20, 0.0036);
    }
}

TEST(EverySurface, WantsSampledLightsOnlyWhenSmooth) {
    for (const NamedSurface& named : every_surface()) {
        const auto* coated = std::get_if<CoatedSurface>(&named.surface);
        const auto* metal = std::get_if<RoughMetal>(&named.surface);
        const auto* skin = std::get_if<SkinSurface>(&named.surface);
        const bool smooth = (skin != nullptr && skin->spot().roughness < 0.2F) ||
                            (coated != nullptr && coated->alpha() < 0.2F) ||
                            (metal != nullptr && metal->alpha() < 0.2F);
        EXPECT_EQ(wants_mis(named.surface), smooth) << named.name;
    }
}

}  // namespace
}  // namespace understudy
