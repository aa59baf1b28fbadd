// Light through a diffusion cloth against closed forms, and its two ways of being found against each other.
#include <gtest/gtest.h>

#include "support/studio_from.h"
#include "transport/path_tracer.h"

namespace understudy {
namespace {

struct Mean {
    double value = 0.0;
    double error = 0.0;  // standard error, of independent runs
};

// Of layer 0 at the face point, per lumen: 64 runs of 64 paths.
Mean face_reading(const Stage& stage, const Gathering& place) {
    const PathTracer tracer(stage);
    constexpr int kRuns = 64;
    double sum = 0.0;
    double squares = 0.0;
    for (std::uint32_t run = 0; run < kRuns; ++run) {
        double mean = 0.0;
        for (std::uint32_t i = 0; i < 64; ++i) {
            const Sampler sampler(1, run, i);
            PathLight light;
            tracer.gather(place, sample_waves(sampler.group(1).x), sampler, light);
            const Light4& layer = light.layers[0];
            mean += static_cast<double>(layer.x + layer.y + layer.z + layer.w) / (4.0 * 64.0);
        }
        sum += mean / kRuns;
        squares += mean * mean / kRuns;
    }
    return {sum, std::sqrt((squares - sum * sum) / (kRuns - 1))};
}

// A frame 1 m before the face, square to the way to it, and a small ball lamp `behind` metres farther on.
std::string frame_before_face(const std::string& surface, const std::string& size, double behind) {
    return "[sitter]\nhead = \"none\"\n[backdrop]\nsurface = \"none\"\n[[light]]\nmodifier = { shape = \"sphere\", "
           "diameter = 0.05 }\nmeter = 4.0\nposition = [0, 1.25, " +
           std::to_string(1.0 + behind) + "]\n[[panel]]\nsurface = " + surface + "\nsize = " + size +
           "\nposition = [0, 1.25, 1]\n";
}

// The face point with nobody there stands at z = 0 whatever the head.
Vec3 face_of(const Studio& studio) { return {studio.points.face}; }

// A far lamp lights the frame's back evenly: E = Φ / (4π d²) within (a² + b²) / (4 d²) of it, and the frame shines on
// the face like Lambert's rectangle: T · E · F, F = 4 · 0.05986412 = 0.23945647 for 1 × 1 m at 1 m (Howell's catalogue
// of radiation configuration factors, the rectangle with the receiver's normal through its corner, four times).
TEST(Scrim, AFarLampBehindItLightsTheFaceByTheConfigurationFactor) {
    const Studio studio = studio_from(frame_before_face("{ reflects = 0.5, transmits = 0.4 }", "[1, 1]", 30.0));
    ASSERT_NEAR(face_of(studio).z, 0.0F, 1e-6F);
    const Stage stage(studio, Stage::With::kNobody);
    const Mean reading = face_reading(stage, {face_of(studio)});
    const double behind = 1.0 / (4.0 * kPiDouble * 30.0 * 30.0);
    const double expected = 0.4 * behind * 0.23945647;
    // The corner of the frame is 1/3600 farther off and gets (cos³) 1 − 3/2 · 0.5 / 900 of the light: 0.0008 at most.
    EXPECT_NEAR(reading.value, expected, 3.0 * reading.error + 0.001 * expected);
    EXPECT_LT(3.0 * reading.error, 0.01 * expected);
}

// A very wide frame halfway to a lamp: whatever falls on the plane comes out of it by T. Over a plane at h the lamp's
// E = I h / r³; the face at the same distance on the other side gets T / π ∫ E cos² / r² dA = T I / 2 · … by the same
// lamp's mirror law: ∫ (h / r³)(h² / r⁴) dA / π = 2 h³ ∫ ρ dρ / r⁷ = 2 / (5 h²). So E = 0.4 T I / h².
TEST(Scrim, AWideClothHalfwayToALamp) {
    const Studio studio = studio_from(frame_before_face("{ reflects = 0.5, transmits = 0.4 }", "[20, 20]", 1.0));
    const Stage stage(studio, Stage::With::kNobody);
    const Mean reading = face_reading(stage, {face_of(studio)});
    const double expected = 0.4 * 0.4 / (4.0 * kPiDouble);
    // Beyond 10 m of a height of 1 m lie less than 2 / (5 · 101^2.5) · 5 / 2 = 1e-5 of it.
    EXPECT_NEAR(reading.value, expected, 3.0 * reading.error + 2e-5 * expected);
    EXPECT_LT(3.0 * reading.error, 0.1 * expected);
}

// Open threads let their share of the lamp itself through: Φ / (4π d²) times the share, and nothing scattered.
TEST(Scrim, WhatPassesBetweenTheThreadsIsTheLampsOwnLightWeakened) {
    const Studio studio = studio_from(frame_before_face("{ reflects = 0, transmits = 0, open = 0.25 }", "[1, 1]", 1.0));
    const Stage stage(studio, Stage::With::kNobody);
    for (const Response response : {Response::kFlat, Response::kDome}) {
        const Mean reading = face_reading(stage, {face_of(studio), {0.0F, 0.0F, 1.0F}, response});
        EXPECT_NEAR(reading.value, 0.25 / (4.0 * kPiDouble * 4.0), 1e-3 * reading.value + 3.0 * reading.error);
    }
}

// Two cloths one behind the other take what both take. Read on the axis of a far lamp.
TEST(Scrim, TwoOpenClothsWeakenTwice) {
    const Studio studio =
        studio_from(frame_before_face("{ reflects = 0, transmits = 0, open = 0.5 }", "[1, 1]", 4.0) +
                    "[[panel]]\nname = \"second\"\nsurface = { reflects = 0, transmits = 0, open = 0.5 }\nsize = [1, "
                    "1]\nposition = [0, 1.25, 2]\n");
    const Stage stage(studio, Stage::With::kNobody);
    const Mean reading = face_reading(stage, {face_of(studio)});
    EXPECT_NEAR(reading.value, 0.25 / (4.0 * kPiDouble * 25.0), 1e-3 * reading.value + 3.0 * reading.error);
}

// Even light all round is as even behind a cloth that takes nothing: the furnace. A flat receptor reads 1 lx.
TEST(Scrim, AClothThatTakesNothingLeavesEvenLightEven) {
    const Studio studio =
        studio_from("[room]\nambient = 1\n" +
                    frame_before_face("{ reflects = 0.5, transmits = 0.3, open = 0.2 }", "[1.5, 1.5]", 30.0));
    const Stage stage(studio, Stage::With::kNobody);
    const PathTracer tracer(stage);
    double sum = 0.0;
    double squares = 0.0;
    constexpr int kPaths = 16384;
    for (std::uint32_t i = 0; i < kPaths; ++i) {
        const Sampler sampler(1, i / 64, i % 64);
        PathLight light;
        tracer.gather({face_of(studio)}, sample_waves(sampler.group(1).x), sampler, light);
        const auto value = static_cast<double>(light.layers[1].x);
        sum += value / kPaths;
        squares += value * value / kPaths;
    }
    const double error = std::sqrt((squares - sum * sum) / kPaths);
    EXPECT_NEAR(sum, 1.0, 3.0 * error);
    EXPECT_LT(3.0 * error, 0.02);
}

// Ways sent to the cloth are as likely as their stated density says: over random own ways that meet the cloth, the mean
// of 1 / p over the samples is the solid angle it fills (4 asin of Girard's form: a square of half side s at distance h
// fills 4 asin(s² / (s² + h²))).
TEST(Scrim, WaysToItHaveTheDensityTheyState) {
    const Studio studio = studio_from(frame_before_face("\"diffusion\"", "[1, 1]", 1.0));
    const Stage stage(studio, Stage::With::kNobody);
    for (const Response response : {Response::kFlat, Response::kDome}) {
        const WaysToScrims ways(stage.scrims(), {face_of(studio), {0.0F, 0.0F, 1.0F}, response});
        ASSERT_GT(ways.share(), 0.0F);
        double angle = 0.0;
        constexpr int kCount = 4096;
        for (std::uint32_t i = 0; i < kCount; ++i) {
            const Vec4 u = Sampler(0, 0, i).group(0);
            const Vec3 direction = ways.sample(Vec3(u));
            const float density = ways.density(direction);
            ASSERT_GT(density, 0.0F);
            angle += 1.0 / static_cast<double>(density) / kCount;
        }
        EXPECT_NEAR(angle, 4.0 * std::asin(0.25 / 1.25), 2e-3);
        EXPECT_EQ(ways.density({0.0F, 0.0F, -1.0F}), 0.0F);
    }
}

}  // namespace
}  // namespace understudy
