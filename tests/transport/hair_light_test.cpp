// Light on a single hair, against what its fibre scatters.
#include <gtest/gtest.h>

#include <cmath>

#include "support/studio_from.h"
#include "transport/path_tracer.h"

namespace understudy {
namespace {

constexpr float kRadius = 0.0005F;
const Vec3 kMiddle(0.0F, 1.25F, 0.0F);
const Vec3 kTangent = glm::normalize(Vec3(0.3F, 1.0F, 0.1F));

Studio with_hair(Studio studio, const HairPigment& pigment) {
    studio.sitter.strands.shades = {pigment};
    studio.sitter.strands.points = {{kMiddle - 0.2F * kTangent, kRadius}, {kMiddle + 0.2F * kTangent, kRadius}};
    studio.sitter.strands.strands = {{0, 2, 0, StrandKind::kHair}};
    return studio;
}

// From the front, past the hair's axis by a share of its radius.
Ray ray_past(float share) {
    const Vec3 wo = glm::normalize(Vec3(0.1F, 0.2F, 1.0F));
    const Vec3 aside = glm::normalize(glm::cross(wo, kTangent));
    return {kMiddle + share * kRadius * aside + wo, -wo};
}

// The white furnace: under even light of 1 lx from all around, E = π L, a hair that takes nothing looks like what is
// behind it.
TEST(HairLight, AClearHairVanishesInEvenLight) {
    const Studio studio = with_hair(studio_from("[sitter]\nhead = \"none\"\n[backdrop]\nsurface = \"none\"\n[room]\n"
                                                "ambient = \"100 lx\"\n[[light]]\nmodifier = { shape = \"sphere\", "
                                                "diameter = 0.1 }\nmeter = 4.0\nposition = [0, 1, -9]\n"),
                                    {0.0, 0.0});
    const Stage stage(studio, Stage::With::kSitter);
    const PathTracer tracer(stage);
    for (std::uint32_t i = 0; i < 200; ++i) {
        PathLight light;
        const Sampler sampler(1, 0, i);
        tracer.look(ray_past(-0.9F + 0.009F * static_cast<float>(i)), sample_waves(0.3F), sampler, light);
        EXPECT_NEAR(light.layers[1].x, 1.0F / kPi, 1e-4F) << i;
    }
}

// A picture cannot tell where across a hair it looks, so rays are spread over its width.
constexpr int kPlaces = 256;
float share_of(int place) { return (2.0F * static_cast<float>(place) + 1.0F) / kPlaces - 1.0F; }

// A globe of even radiance, of 1 lm: ∫ value · L over the cap that it fills, by the midpoint rule over the cap and
// across the hair.
double lit_by_globe(const Vec3& lamp, const HairPigment& pigment, const Waves& waves) {
    constexpr int kSteps = 48;
    const Frame round = Frame::around(kTangent);
    const Frame frame{kTangent, round.tangent, round.bitangent};
    const HairFibre fibre{hair_absorption(pigment)};
    const Vec3 away = lamp - kMiddle;
    const float distance = glm::length(away);
    const float cosine = std::sqrt(1.0F - 0.25F * 0.25F / (distance * distance));
    const Frame cap = Frame::around(away / distance);
    double sum = 0.0;
    for (int place = 0; place < kPlaces; ++place) {
        const float share = share_of(place);
        // ray_past goes by on the side of cross(wo, tangent): across is the share itself.
        const FibreApproach from = approach_fibre(fibre, frame.to_local(-ray_past(share).direction), share, waves);
        for (int j = 0; j < kSteps; ++j) {
            const float z = 1.0F - (1.0F - cosine) * (static_cast<float>(j) + 0.5F) / kSteps;
            for (int k = 0; k < kSteps; ++k) {
                const float turn = 2.0F * kPi * (static_cast<float>(k) + 0.5F) / kSteps;
                const float s = std::sqrt(1.0F - z * z);
                const Vec3 wi = cap.to_world({s * std::cos(turn), s * std::sin(turn), z});
                sum += static_cast<double>(fibre_value(from, frame.to_local(wi)).value.y);
            }
        }
    }
    const double radiance = 1.0 / (kPiDouble * 4.0 * kPiDouble * 0.25 * 0.25);
    return sum * radiance * 2.0 * kPiDouble * (1.0 - static_cast<double>(cosine)) / (kPlaces * kSteps * kSteps);
}

// The lamp before the hair, beside it and behind it, where the narrow way straight through is.
TEST(HairLight, AHairIsLitAsItsFibreScatters) {
    const Waves waves{{450.0F, 530.0F, 600.0F, 680.0F}, {3, 7, 11, 14}};
    const HairPigment pigment{1.3, 0.2};
    for (const Vec3& lamp : {Vec3(0.7F, 1.9F, 1.5F), Vec3(1.5F, 1.3F, 0.0F), Vec3(-0.1F, 1.05F, -1.8F)}) {
        const Studio studio = with_hair(
            studio_from("[sitter]\nhead = \"none\"\n[backdrop]\nsurface = \"none\"\n[[light]]\nmodifier = { shape = "
                        "\"sphere\", diameter = 0.5 }\nmeter = 4.0\nposition = [" +
                        std::to_string(lamp.x) + ", " + std::to_string(lamp.y) + ", " + std::to_string(lamp.z) + "]\n"),
            pigment);
        const Stage stage(studio, Stage::With::kSitter);
        const PathTracer tracer(stage);
        double sum = 0.0;
        double squares = 0.0;
        constexpr std::uint32_t kRuns = 32;
        for (std::uint32_t run = 0; run < kRuns; ++run) {
            double mean = 0.0;
            for (int place = 0; place < kPlaces; ++place) {
                PathLight light;
                tracer.look(ray_past(share_of(place)), waves, Sampler(7, run, static_cast<std::uint32_t>(place)),
                            light);
                mean += static_cast<double>(light.layers[0].y) / kPlaces;
            }
            sum += mean / kRuns;
            squares += mean * mean / kRuns;
        }
        const double error = std::sqrt((squares - sum * sum) / (kRuns - 1));
        const double expected = lit_by_globe(lamp, pigment, waves);
        EXPECT_NEAR(sum, expected, 3.5 * error + 0.003 * expected) << lamp.z;
        EXPECT_LT(error, 0.05 * expected) << lamp.z;
    }
}

}  // namespace
}  // namespace understudy
