#include "scatter/skin_surface.h"

#include <gtest/gtest.h>

#include "random_stream.h"
#include "scatter/coated_surface.h"
#include "scatter/skin_layers.h"

namespace understudy {
namespace {

// The tables stand for the formulas behind them, at shares and wavelengths that are no nodes.
TEST(SkinSurface, HasTheColourOfItsLayers) {
    const SkinLayers& layers = SkinLayers::common();
    for (const double melanin : {0.0, 0.004, 0.0123, 0.057, 0.2, 0.47, 0.5}) {
        for (const double blood : {0.0, 0.003, 0.021, 0.13, 0.2}) {
            const Spectrum exact = skin_albedo(melanin, blood);
            const auto mixture = layers.mixture(static_cast<float>(melanin), static_cast<float>(blood));
            for (float nm = 381.0F; nm < 720.0F; nm += 7.3F) {
                EXPECT_NEAR(layers.albedo(mixture, nm), exact.at(nm), 0.003F) << melanin << " " << blood << " " << nm;
            }
        }
    }
}

TEST(SkinSurface, HasTheCoatOfItsRoughness) {
    for (const float alpha : {0.10F, 0.13F, 0.3F, 0.47F, 0.60F}) {
        const CoatedSurface exact(Spectrum(0.5F), kSkinIndex, alpha);
        for (const float coat : {1.0F, 0.4F}) {
            const SkinSpot spot{0.02F, 0.02F, alpha, coat};
            EXPECT_NEAR(mean_coat_reflectance(spot), coat * exact.coat().mean(), 0.001F);
            for (const float cosine : {0.02F, 0.1F, 0.3F, 0.7F, 1.0F}) {
                EXPECT_NEAR(coat_reflectance(spot, cosine), coat * exact.coat().at(cosine), 0.004F)
                    << alpha << " " << cosine;
            }
        }
    }
}

// White furnace: the two parts, asked for apart, add up to the whole, and with a white base to all the light.
TEST(SkinSurface, LosesNothingBetweenItsParts) {
    const Waves waves{{450.0F, 530.0F, 600.0F, 660.0F}, {}};
    RandomStream random(5);
    for (const SkinSpot& spot : {SkinSpot{}, SkinSpot{0.3F, 0.02F, 0.18F, 1.0F}, SkinSpot{0.02F, 0.1F, 0.48F, 0.5F}}) {
        const SkinSurface surface(spot);
        const Approach below = approach_from_below(spot);
        for (const float cosine : {0.1F, 0.4F, 0.9F}) {
            const Vec3 wo(std::sqrt(1.0F - cosine * cosine), 0.0F, cosine);
            const Approach coat = approach_of_coat(spot, wo);
            Approach whole = approach(spot, wo, waves);
            whole.colour = Light4(1.0F);
            double sum = 0.0;
            double out = 0.0;
            constexpr int kCount = 40000;
            for (int i = 0; i < kCount; ++i) {
                const Vec3 u = random.next3();
                if (const auto sample = sample_scatter(surface, whole, u)) {
                    sum += static_cast<double>(sample->weight.x) / kCount;
                    const float parts = scatter_value(surface, coat, sample->wi).value.x +
                                        (1.0F - coat.reflected) * scatter_value(surface, below, sample->wi).value.x;
                    ASSERT_NEAR(parts, scatter_value(surface, whole, sample->wi).value.x, 1e-4F * (1.0F + parts));
                }
                const Vec3 v = random.next3();
                if (const auto sample = sample_scatter(surface, below, v))
                    out += static_cast<double>(sample->weight.x) / kCount;
            }
            EXPECT_NEAR(sum, 1.0, 0.01);
            EXPECT_NEAR(out, 1.0, 0.003);
        }
    }
}

// Twice through its melanin, flesh has the skin's colour; flesh without any lets all pass.
TEST(SkinSurface, IsItsFleshThroughItsMelanin) {
    const Waves waves{{630.0F, 550.0F, 450.0F, 590.0F}, {}};
    for (const float melanin : {0.0F, 0.02F, 0.1F, 0.4F}) {
        const SkinSpot spot{melanin, 0.02F};
        const Light4 colour = skin_colour(spot, waves);
        const SkinDepth depth = skin_depth(spot, colour, waves);
        for (glm::length_t k = 0; k < 4; ++k) {
            EXPECT_NEAR(depth.passes[k] * depth.passes[k] * depth.flesh[k], colour[k], 1e-5F) << melanin;
            EXPECT_LE(depth.passes[k], 1.0F + 1e-5F) << melanin;
            EXPECT_EQ(melanin > 0.0F, depth.passes[k] < 1.0F - 1e-5F) << melanin;
        }
    }
}

}  // namespace
}  // namespace understudy
