#include "film/develop.h"
#include "film/enlarge.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "film_fixtures.h"
#include "spectrum/colour.h"
#include "spectrum/observer.h"

namespace understudy {
namespace {

constexpr float kNan = std::numeric_limits<float>::quiet_NaN();

// By ISO 2720's incident equation a matt white at the metered aperture is 1, and 18 % grey is sRGB code 118.
TEST(Develop, PutsTheGreyCardAt118UnderItsOwnWhite) {
    for (const char* name : {"A", "D55", "D65", "FL2", "FL11", "LED-B3"}) {
        const Spectrum light = *cie_illuminant(name);
        const Picture grey = develop(card(Spectrum(0.18F)), metered(light, light));
        const Picture white = develop(card(Spectrum(1.0F)), metered(light, light));
        for (int channel = 0; channel < 3; ++channel) {
            EXPECT_NEAR(grey.pixels[5][channel], 0.18F, 1e-5F) << name;
            EXPECT_NEAR(white.pixels[5][channel], 1.0F, 5e-5F) << name;
            EXPECT_EQ(srgb_code(static_cast<double>(grey.pixels[5][channel])), 118) << name;
        }
    }
}

// The luminance of a card does not depend on the light's colour, for power is in lumens and the white keeps its Y.
TEST(Develop, KeepsLuminanceWhateverTheWhiteOfTheLight) {
    const Picture picture = develop(card(Spectrum(0.5F)), metered(*cie_illuminant("D65"), *cie_illuminant("D65")));
    EXPECT_NEAR(xyz_of_linear_srgb(Double3(picture.pixels[0])).y, 0.5, 1e-5);
}

TEST(Develop, ShowsTungstenWarmUnderADaylightWhite) {
    const Picture picture = develop(card(Spectrum(0.5F)), metered(*cie_illuminant("A"), *cie_illuminant("D55")));
    EXPECT_GT(picture.pixels[0].r, 1.3F * picture.pixels[0].g);
    EXPECT_LT(picture.pixels[0].b, 0.5F * picture.pixels[0].g);
}

// One stop each: aperture by √2, ISO by 2, power by 2.
TEST(Develop, FollowsTheCamerasStops) {
    const Film film = card(Spectrum(0.25F));
    const Spectrum light = *cie_illuminant("D55");
    const float base = develop(film, metered(light, light)).pixels[0].g;
    Developing developing = metered(light, light);
    developing.aperture *= std::sqrt(2.0);
    EXPECT_NEAR(develop(film, developing).pixels[0].g, base / 2.0F, 1e-6F);
    developing = metered(light, light);
    developing.iso *= 2.0;
    EXPECT_NEAR(develop(film, developing).pixels[0].g, base * 2.0F, 1e-6F);
    developing = metered(light, light);
    developing.lights[0].exposure_power *= 2.0;
    EXPECT_NEAR(develop(film, developing).pixels[0].g, base * 2.0F, 1e-6F);
    developing = metered(light, light * 17.0F);
    EXPECT_NEAR(develop(film, developing).pixels[0].g, base, 1e-6F);
    developing = metered(light, light * 0.2F);
    EXPECT_NEAR(develop(film, developing).pixels[0].g, base, 1e-6F);
}

TEST(Develop, AddsTheLayersUpToTheWhole) {
    const Film film = busy_film(9, 7);
    for (const Treatment treatment : {Treatment::kColour, Treatment::kBlackAndWhite}) {
        Developing developing = developing_of(film);
        developing.treatment = treatment;
        const Picture whole = develop(film, developing);
        std::vector<Vec3> sum(film.pixel_count(), Vec3(0.0F));
        for (std::size_t layer = 0; layer < film.layers.size(); ++layer) {
            const Picture share = develop_layer(film, developing, layer);
            for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += share.pixels[i];
        }
        for (std::size_t i = 0; i < sum.size(); ++i) {
            for (int channel = 0; channel < 3; ++channel) {
                EXPECT_NEAR(sum[i][channel], whole.pixels[i][channel], 1e-5F * std::abs(whole.pixels[i].g));
            }
        }
    }
}

TEST(Develop, TurnsALightOffByItsPowerAlone) {
    const Film film = busy_film(3, 2);
    Developing developing = developing_of(film);
    developing.lights[1].exposure_power = 0.0;
    developing.lights[2].exposure_power = 0.0;
    EXPECT_EQ(develop(film, developing).pixels, develop_layer(film, developing, 0).pixels);
}

TEST(BlackAndWhite, IsNeutralAndAsBrightAsColourForGreys) {
    for (const char* name : {"A", "D55", "FL11"}) {
        Developing developing = metered(*cie_illuminant(name), *cie_illuminant(name));
        developing.treatment = Treatment::kBlackAndWhite;
        const Vec3 grey = develop(card(Spectrum(0.18F)), developing).pixels[0];
        EXPECT_NEAR(grey.g, 0.18F, 1e-5F) << name;
        EXPECT_EQ(grey.r, grey.g);
        EXPECT_EQ(grey.b, grey.g);
    }
}

// Panchromatic film sees blue far better than the eye does, so blue things come out lighter than their luminance (any
// textbook's reason for the yellow filter), and it is blind beyond 680 nm.
TEST(BlackAndWhite, IsAFilmsResponseAndNoMixOfChannels) {
    const Spectrum blue = Spectrum::tabulate([](float nm) { return nm < 480.0F ? 0.8F : 0.05F; });
    Developing developing = metered(*cie_illuminant("D55"), *cie_illuminant("D55"));
    const Double3 colour(develop(card(blue), developing).pixels[0]);
    developing.treatment = Treatment::kBlackAndWhite;
    EXPECT_GT(static_cast<double>(develop(card(blue), developing).pixels[0].g), 2.0 * xyz_of_linear_srgb(colour).y);
    const Spectrum far_red = Spectrum::tabulate([](float nm) { return nm < 680.0F ? 0.0F : 1.0F; });
    EXPECT_LT(develop(card(far_red), developing).pixels[0].g, 0.01F);
}

TEST(Develop, GivesAlbedoOfWhiteAsOne) {
    Film film = card(Spectrum(0.5F));
    film.features.albedo.assign(film.pixel_count(), band_means(Spectrum(1.0F)));
    const Picture albedo = develop_albedo(film, metered(*cie_illuminant("A"), *cie_illuminant("A")));
    for (int channel = 0; channel < 3; ++channel) EXPECT_NEAR(albedo.pixels[0][channel], 1.0F, 5e-5F);
}

TEST(Develop, HidesNothingThatIsNoNumber) {
    Film film = card(Spectrum(0.18F));
    film.layers[0].pixels[2][7] = kNan;
    film.layers[0].pixels[3][7] = kInfinity;
    const Picture picture = develop(film, metered(*cie_illuminant("D55"), *cie_illuminant("D55")));
    EXPECT_GE(count_non_finite(picture), 5U);  // all of the first, at least two of the second
    EXPECT_TRUE(std::isnan(picture.pixels[2].g));
    EXPECT_EQ(count_non_finite(develop(card(Spectrum(0.18F)), metered(Spectrum(1.0F), Spectrum(1.0F)))), 0U);
}

TEST(Develop, KeepsColoursOutsideTheGamutAndOverWhite) {
    const Spectrum green = Spectrum::tabulate([](float nm) { return std::abs(nm - 515.0F) < 10.0F ? 1.0F : 0.0F; });
    const Picture picture = develop(card(green), metered(*cie_illuminant("D55"), *cie_illuminant("D55")));
    EXPECT_LT(picture.pixels[0].r, 0.0F);
    EXPECT_GT(develop(card(Spectrum(3.0F)), metered(Spectrum(1.0F), Spectrum(1.0F))).pixels[0].g, 2.9F);
}

TEST(Clipping, CountsPixelsNotChannels) {
    Picture picture{2, 2, {Vec3(0.5F), Vec3(2.0F), Vec3(0.1F, 0.2F, 1.01F), Vec3(1.0F)}};
    EXPECT_DOUBLE_EQ(clipped_share(picture), 0.5);
    EXPECT_DOUBLE_EQ(clipped_share(Picture{}), 0.0);
}

// Every other pixel of a slope that is even gives the slope back.
TEST(Enlarged, KeepsASlope) {
    Picture thin{3, 2, {}};
    for (int y = 0; y < 2; ++y) {
        for (int x = 0; x < 3; ++x) thin.pixels.emplace_back(static_cast<float>(2 * x + 10 * y));
    }
    const Picture whole = enlarged(thin, 2, 5, 3);
    ASSERT_EQ(whole.pixels.size(), 15U);
    for (int i = 0; i < 15; ++i) {
        const int row = i / 5;
        const auto wanted = static_cast<float>(i % 5 + 5 * row);
        EXPECT_FLOAT_EQ(whole.pixels[static_cast<std::size_t>(i)].x, wanted) << i;
    }
    EXPECT_EQ(enlarged(thin, 2, 6, 4).pixels.back(), thin.pixels.back());
}

}  // namespace
}  // namespace understudy
