// What cleaning leaves as it is.
#include "denoise/denoiser.h"

#include <gtest/gtest.h>

#include <random>

#include "film/exposure.h"
#include "spectrum/illuminant.h"

namespace understudy {
namespace {

constexpr std::size_t kBright = 20 * 48 + 17;

// A grey wall full of noise, and perhaps a catchlight of one pixel.
Film wall(float glint) {
    Film film;
    film.width = 48;
    film.height = 32;
    film.samples = 4;
    film.features.samples = 4;
    film.layers.push_back({"key", std::vector<Bands>(film.pixel_count()), std::vector<float>(film.pixel_count())});
    std::mt19937 random(5);
    std::exponential_distribution<float> spread(1.0F);
    for (Bands& pixel : film.layers[0].pixels) pixel.fill(0.2F / kPi * spread(random));
    film.features.albedo.assign(film.pixel_count(), band_means(Spectrum(0.2F)));
    film.features.normal.assign(film.pixel_count(), Vec3(0.0F, 0.0F, 1.0F));
    film.features.depth_m.assign(film.pixel_count(), 2.0F);
    film.layers[0].glints[kBright] = glint;
    for (float& band : film.layers[0].pixels[kBright]) band += glint;
    return film;
}

Developing daylight() {
    Developing developing;
    developing.white = *cie_illuminant("D65");
    developing.lights.push_back(
        {"key", exposure_of_f_number(developing.aperture, developing.iso), *cie_illuminant("D65")});
    return developing;
}

// By the filter and, where its weights are, by the network.
TEST(Denoiser, LeavesACatchlightAsItIs) {
    for (const char* weights : {"none.tza", UNDERSTUDY_DENOISER_FILE}) {
        const auto denoiser = Denoiser::open(weights);
        ASSERT_TRUE(denoiser);
        const float glint = 5.0F;
        const Picture before = denoiser->clean(wall(0.0F), daylight());
        const Picture after = denoiser->clean(wall(glint), daylight());
        const Picture wanted = develop_glints(wall(glint), daylight());
        for (std::size_t i = 0; i < after.pixels.size(); ++i) {
            EXPECT_NEAR(after.pixels[i].y - before.pixels[i].y, wanted.pixels[i].y, 1e-4F * (1.0F + wanted.pixels[i].y))
                << i;
        }
        // White is 1 here, and a matt white card would be 1 / π a lumen.
        EXPECT_NEAR(wanted.pixels[kBright].y, glint * kPi, 0.01F * glint * kPi);
    }
}

// What few paths have told of the light is cleaned when many have told what the camera sees, and not otherwise.
TEST(Denoiser, GoesByHowWellItIsKnownWhatIsSeen) {
    const auto denoiser = Denoiser::open("none.tza");
    ASSERT_TRUE(denoiser);
    Film film = wall(0.0F);
    film.samples = 1;
    EXPECT_NE(denoiser->clean(film, daylight()).pixels, develop(film, daylight()).pixels);
    film.features.samples = 1;
    EXPECT_EQ(denoiser->clean(film, daylight()).pixels, develop(film, daylight()).pixels);
}

}  // namespace
}  // namespace understudy
