// A moved light's first films: its own layer traced, the rest from the film before.
#include "rehearsal/laid_film.h"

#include <gtest/gtest.h>

namespace understudy {
namespace {

// Four pixels by two, alike but for their depth.
Film film(float transfer, float albedo, int samples) {
    Film made;
    made.width = 4;
    made.height = 2;
    made.samples = samples;
    Bands bands;
    bands.fill(transfer);
    for (const char* light : {"key", "fill"}) {
        made.layers.push_back({light, std::vector<Bands>(8, bands), std::vector<float>(8, 0.5F * transfer)});
    }
    bands.fill(albedo);
    made.features = {std::vector<Bands>(8, bands), std::vector<Vec3>(8, Vec3(0.0F, 0.0F, 1.0F)),
                     std::vector<float>(8, 2.0F), samples};
    return made;
}

TEST(LaidFilm, TakesFromTheFilmBeforeWhatWasNotTraced) {
    const Film before = film(1.0F, 0.5F, 64);
    Film traced = film(3.0F, 0.9F, 1);
    traced.layers[1] = {"fill", {}};
    const Film laid = laid_over(before, traced, 1U, 1);
    EXPECT_EQ(laid.samples, 1);
    EXPECT_EQ(laid.layers[0].pixels, traced.layers[0].pixels);
    EXPECT_EQ(laid.layers[0].glints, traced.layers[0].glints);
    EXPECT_EQ(laid.layers[1].pixels, before.layers[1].pixels);
    EXPECT_EQ(laid.layers[1].glints, before.layers[1].glints);
    EXPECT_EQ(laid.features.albedo, before.features.albedo);
    EXPECT_EQ(laid.features.samples, 64);
}

// Nothing is where a light's body is.
TEST(LaidFilm, SeesAnewWhereALightStandsOrStood) {
    Film before = film(1.0F, 0.5F, 64);
    Film traced = film(3.0F, 0.9F, 1);
    before.features.depth_m[2] = 0.0F;
    traced.features.depth_m[5] = 0.0F;
    const Film laid = laid_over(before, traced, 3U, 1);
    // The next pass has seen more of those places, and is believed again.
    const Film next = film(3.0F, 0.8F, 2);
    const Film again = laid_over(laid, next, 3U, 1);
    for (std::size_t i = 0; i < 8; ++i) {
        const bool anew = i == 2 || i == 5;
        EXPECT_EQ(laid.features.albedo[i], (anew ? traced : before).features.albedo[i]) << i;
        EXPECT_EQ(again.features.albedo[i], (anew ? next : before).features.albedo[i]) << i;
    }
}

TEST(LaidFilm, KeepsItsOwnViewOnceAsManyPathsHaveToldOfIt) {
    const Film traced = film(3.0F, 0.9F, 64);
    EXPECT_EQ(laid_over(film(1.0F, 0.5F, 64), traced, 1U, 1).features.albedo, traced.features.albedo);
}

TEST(LaidFilm, ThinsTheFilmBefore) {
    Film before = film(1.0F, 0.5F, 64);
    before.layers[1].pixels[2].fill(7.0F);
    Film traced = film(3.0F, 0.9F, 1);
    traced.width = 2;
    traced.height = 1;
    traced.layers[0].pixels.resize(2);
    traced.layers[0].glints.resize(2);
    traced.layers[1] = {"fill", {}};
    traced.features = {std::vector<Bands>(2), std::vector<Vec3>(2), std::vector<float>(2, 2.0F), 1};
    const Film laid = laid_over(before, traced, 1U, 2);
    ASSERT_EQ(laid.layers[1].pixels.size(), 2U);
    EXPECT_EQ(laid.layers[1].pixels[1], before.layers[1].pixels[2]);
    EXPECT_EQ(laid.features.albedo.size(), 2U);
}

}  // namespace
}  // namespace understudy
