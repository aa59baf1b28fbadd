// Light that is followed under the skin, on a ball of it.
#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "scatter/random_stream.h"
#include "scatter/skin_surface.h"
#include "support/ball_of_skin.h"
#include "support/studio_from.h"
#include "transport/path_tracer.h"
#include "transport/render.h"

namespace understudy {
namespace {

constexpr Waves kWaves{{630.0F, 550.0F, 450.0F, 590.0F}, {}};
constexpr float kRadius = 0.05F;

Studio ball_studio(const std::string& light, const SkinSpot& spot, float radius = kRadius) {
    Studio studio = studio_from("[sitter]\nhead = \"none\"\n[backdrop]\nsurface = \"none\"\n" + light);
    studio.sitter.kind = Sitter::Kind::kHead;
    studio.sitter.mesh = ball_of_skin(90, Vec3(studio.points.face), radius, spot);
    return studio;
}

struct Seen {
    Light4 mean{0.0F};
    Light4 error{0.0F};
};

// Of a layer, round the place of the ball with this outward normal, each seen from straight over it. About: how far the
// normals turn to either side; pores and lines differ from place to place, and only their mean is the skin's own.
Seen look_at(const Studio& studio, const Vec3& normal, std::size_t layer, std::uint32_t paths,
             const WalkTuning& tuning = {}, float about = 0.0F) {
    const Stage stage(studio, Stage::With::kSitter);
    const PathTracer tracer(stage, tuning);
    Light4 sum(0.0F);
    Light4 squares(0.0F);
    RandomStream random(5);
    for (std::uint32_t i = 0; i < paths; ++i) {
        PathLight light;
        const Vec3 out = glm::normalize(normal + 2.0F * about * (random.next3() - 0.5F));
        tracer.look({Vec3(studio.points.face) + 0.4F * out, -out}, kWaves, Sampler(3, 0, i), light);
        sum += light.layers[layer];
        squares += light.layers[layer] * light.layers[layer];
    }
    Seen seen;
    const auto count = static_cast<float>(paths);
    seen.mean = sum / count;
    const Light4 spread = squares / count - seen.mean * seen.mean;
    for (glm::length_t k = 0; k < 4; ++k) seen.error[k] = std::sqrt(std::max(0.0F, spread[k]) / count);
    return seen;
}

// In even light of 1 lx from everywhere, radiance 1/π, skin sends back just the share of it that its coat mirrors and
// the share that its colour says of the rest: the white furnace, with light followed under the skin. The ball is so
// large (300 mean free paths) that it is flat.
TEST(UnderSkin, KeepsItsColourInEvenLight) {
    for (const SkinSpot& spot : {SkinSpot{0.005F, 0.005F, 0.3F, 1.0F}, SkinSpot{0.02F, 0.02F, 0.25F, 0.7F},
                                 SkinSpot{0.3F, 0.02F, 0.15F, 1.0F}}) {
        const Studio studio = ball_studio(
            "[room]\nambient = 1\n[[light]]\nmodifier = { shape = \"disc\", diameter = 0.1 }\nmeter = 4\n", spot, 0.1F);
        const Seen seen = look_at(studio, glm::normalize(Vec3(0.3F, 0.2F, 0.9F)), 1, 40000, {}, 0.1F);
        const float coat = coat_reflectance(spot, 1.0F);
        const Light4 colour = skin_colour(spot, kWaves);
        for (glm::length_t k = 0; k < 4; ++k) {
            const float wanted = (coat + (1.0F - coat) * colour[k]) / kPi;
            EXPECT_NEAR(seen.mean[k], wanted, 0.01F * wanted + 3.0F * seen.error[k]) << k;
        }
    }
}

// Following light under the skin moves it but takes none: on the side that an even, broad light shines on squarely it
// is as bright as skin that scatters at its surface.
TEST(UnderSkin, IsAsBrightAsFlatSkinInBroadLight) {
    const std::string light =
        "[[light]]\nmodifier = { shape = \"disc\", diameter = 2 }\nmeter = 4\nangle = 0\nelevation = 0\ndistance = "
        "1.5\n";
    Studio studio = ball_studio(light, {});
    const Seen deep = look_at(studio, Vec3(0.0F, 0.0F, 1.0F), 0, 30000);
    studio.setup.picture.skin = SkinLight::kAtSurface;
    const Seen flat = look_at(studio, Vec3(0.0F, 0.0F, 1.0F), 0, 3000);
    for (glm::length_t k = 0; k < 4; ++k) {
        EXPECT_NEAR(deep.mean[k], flat.mean[k], 0.02F * flat.mean[k] + 3.0F * std::hypot(deep.error[k], flat.error[k]))
            << k;
    }
}

// Melanin lies over the flesh and not in it: no piece of dark skin, however thin, sends back more than what gets
// through its melanin twice. A grain of half a millimetre, which takes up next to nothing within.
TEST(UnderSkin, IsDarkWhereItIsThin) {
    const SkinSpot spot{0.3F, 0.005F, 0.3F, 1.0F};
    const Studio studio = ball_studio(
        "[room]\nambient = 1\n[[light]]\nmodifier = { shape = \"disc\", diameter = 0.1 }\nmeter = 4\n", spot, 0.0005F);
    const Seen seen = look_at(studio, glm::normalize(Vec3(0.3F, 0.2F, 0.9F)), 1, 10000);
    const float coat = coat_reflectance(spot, 1.0F);
    const Light4 passes = skin_depth(spot, skin_colour(spot, kWaves), kWaves).passes;
    for (glm::length_t k = 0; k < 4; ++k) {
        const float most = (coat + (1.0F - coat) * passes[k] * passes[k]) / kPi;
        EXPECT_LT(seen.mean[k], most + 3.0F * seen.error[k]) << k;
        EXPECT_GT(seen.mean[k], 0.8F * most) << k;
    }
}

// How much of a light from the side comes back past the terminator of a large ball, so far beyond it, over what comes
// back where the light falls in squarely: by the dipole for the medium, with nothing to hold light back at its surface
// (Jensen and others 2001, eq. 4). Toward the light the irradiance grows as the way from the terminator over the
// radius.
double past_terminator_by_dipole(double scattered, double extinction, double beyond, double radius) {
    const double absorption = (1.0 - scattered) * extinction;
    const double decay = std::sqrt(3.0 * absorption * extinction);
    const double real = 1.0 / extinction;
    const double mirrored = real * (1.0 + 4.0 / 3.0);
    const auto profile = [&](double r) {
        const double a = std::hypot(r, real);
        const double b = std::hypot(r, mirrored);
        return real * (1.0 + decay * a) * std::exp(-decay * a) / (a * a * a) +
               mirrored * (1.0 + decay * b) * std::exp(-decay * b) / (b * b * b);
    };
    constexpr double kStep = 1e-4;
    double all = 0.0;
    double past = 0.0;
    for (int i = 0; i < 400; ++i) {
        const double x = (i + 0.5) * kStep;
        double line = 0.0;
        for (int k = 0; k < 400; ++k) line += 2.0 * kStep * profile(std::hypot(x, (k + 0.5) * kStep));
        all += 2.0 * kStep * line;
        if (x > beyond) past += kStep * line * (x - beyond) / radius;
    }
    return past / all;
}

// A hard light's terminator: past it flat skin is black, and light followed under the skin is red first. Diffusion is
// too bright near the edge (see tests/scatter/skin_walk_test.cpp): between a half and all of it.
TEST(UnderSkin, MovesTheTerminatorRedFarthest) {
    const std::string light =
        "[[light]]\nmodifier = { shape = \"disc\", diameter = \"4 cm\" }\nmeter = 4\nposition = [5, 1.25, 0]\naim = "
        "[0, 1.25, 0]\n";
    const SkinSpot spot{0.012F, 0.012F, 0.3F, 0.0F};
    Studio studio = ball_studio(light, spot);
    // The middle of the light is at the horizon where the normal leans back by the radius over its distance.
    const auto normal_at = [](float beyond_m) {
        const float angle = beyond_m / kRadius - kRadius / 5.0F;
        return Vec3(-std::sin(angle), 0.0F, std::cos(angle));
    };
    const SkinMedium medium = skin_medium(skin_depth(spot, skin_colour(spot, kWaves), kWaves).flesh, kWaves);
    const Seen toward = look_at(studio, Vec3(1.0F, 0.0F, 0.0F), 0, 20000);
    for (const float beyond : {1e-3F, 2e-3F}) {
        const Seen past = look_at(studio, normal_at(beyond), 0, 80000);
        const Light4 kept = past.mean / toward.mean;
        const Light4 error = past.error / toward.mean;
        EXPECT_GT(kept[0], kept[1] + 3.0F * (error[0] + error[1])) << beyond;
        EXPECT_GT(kept[1], kept[2] + 3.0F * (error[1] + error[2])) << beyond;
        for (int k = 0; k < 3; ++k) {
            const double diffusion = past_terminator_by_dipole(
                static_cast<double>(medium.scattered[k]), static_cast<double>(medium.extinction[k]),
                static_cast<double>(beyond), static_cast<double>(kRadius));
            EXPECT_LT(static_cast<double>(kept[k]), diffusion) << beyond << " " << k;
            EXPECT_GT(static_cast<double>(kept[k]), 0.5 * diffusion) << beyond << " " << k;
        }
    }
    studio.setup.picture.skin = SkinLight::kAtSurface;
    const Seen flat = look_at(studio, normal_at(2e-3F), 0, 200);
    EXPECT_LT(flat.mean[0], 1e-4F * toward.mean[0]);
}

// Guided or not, sparing rays or not: the same picture.
TEST(UnderSkin, LooksTheSameHoweverItIsWalked) {
    const std::string light =
        "[[light]]\nmodifier = { shape = \"disc\", diameter = \"40 cm\" }\nmeter = 4\nposition = [2, 1.25, 0.5]\naim = "
        "[0, 1.25, 0]\n";
    const Studio studio = ball_studio(light, {});
    const Vec3 normal = glm::normalize(Vec3(0.3F, 0.0F, 1.0F));
    const Seen guided = look_at(studio, normal, 0, 40000);
    const Seen plain = look_at(studio, normal, 0, 40000, {0.0F, false, false});
    for (glm::length_t k = 0; k < 4; ++k) {
        EXPECT_NEAR(guided.mean[k], plain.mean[k], 3.5F * std::hypot(guided.error[k], plain.error[k])) << k;
    }
}

// The same film for any number of threads, walks and all.
TEST(UnderSkin, IsTheSameForAnyNumberOfThreads) {
    Studio studio = ball_studio(
        "[picture]\nwidth = 32\nheight = 32\n[camera]\nfocal_length = 400\n[[light]]\nmodifier = { shape = \"disc\", "
        "diameter = 0.3 }\nmeter = 4\n",
        {});
    const Stage stage(studio, Stage::With::kSitter);
    RenderOptions options;
    options.samples = 4;
    options.threads = 1;
    const Rendered one = render_film(studio, stage, options);
    options.threads = 3;
    const Rendered three = render_film(studio, stage, options);
    ASSERT_EQ(one.film.layers.size(), three.film.layers.size());
    EXPECT_EQ(one.film.layers[0].pixels, three.film.layers[0].pixels);
    EXPECT_EQ(one.rays, three.rays);
}

}  // namespace
}  // namespace understudy
