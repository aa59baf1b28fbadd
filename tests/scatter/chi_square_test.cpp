// Samples of every surface against their stated density; first of all, that the harness can tell.
#include "scatter/chi_square.h"

#include <array>
#include <string>

#include <gtest/gtest.h>

#include "scatter/random_stream.h"
#include "scatter/registry.h"
#include "scatter/test_directions.h"

namespace understudy {
namespace {

constexpr std::size_t kSamples = 100000;

TEST(ChiSquare, TailAgreesWithThePublishedQuantiles) {
    // 1 % points: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4.
    EXPECT_NEAR(chi_square_tail(6.635, 1.0), 0.01, 1e-5);
    EXPECT_NEAR(chi_square_tail(23.209, 10.0), 0.01, 1e-5);
    EXPECT_NEAR(chi_square_tail(135.807, 100.0), 0.01, 1e-5);
    // 95 % points of the same table, for the lower branch.
    EXPECT_NEAR(chi_square_tail(3.940, 10.0), 0.95, 1e-4);
    EXPECT_NEAR(chi_square_tail(77.929, 100.0), 0.95, 1e-4);
}

TEST(ChiSquare, TellsANarrowerLobeFromAWiderOne) {
    RandomStream random(1);
    const Vec3 wo = direction_at(0.7F);
    const auto sample = [&]() -> std::optional<Vec3> {
        const float u = random.next();
        const float v = random.next();
        const Vec3 wi = mirror(wo, sample_visible_normal(wo, 0.30F, u, v));
        if (wi.z <= 0.0F) return std::nullopt;
        return wi;
    };
    const auto density = [&](float alpha) {
        return [&wo, alpha](const Vec3& wi) {
            return wi.z > 0.0F ? density_gloss(wo, glm::normalize(wo + wi), alpha) : 0.0F;
        };
    };
    EXPECT_GT(test_directions(kSamples, density(0.30F), sample).p_value, 0.001);
    EXPECT_LT(test_directions(kSamples, density(0.33F), sample).p_value, 1e-6);
}

TEST(ChiSquare, EverySurfaceSamplesItsDensity) {
    const auto surfaces = every_surface();
    const double least = sidak(0.01, surfaces.size() * kTestCosines.size());
    std::uint32_t seed = 100;
    for (const NamedSurface& named : surfaces) {
        for (const float cosine : kTestCosines) {
            const Vec3 wo = direction_at(cosine);
            RandomStream random(++seed);
            const ChiSquare test = test_directions(
                kSamples, [&](const Vec3& wi) { return density_of(named.surface, wo, wi); },
                [&]() -> std::optional<Vec3> {
                    const Vec3 u = random.next3();
                    const auto sample = sample_scatter(named.surface, wo, kTestWaves, u);
                    if (!sample || sample->delta) return std::nullopt;
                    return sample->wi;
                });
            const std::string name = named.name + " " + std::to_string(cosine);
            EXPECT_GE(test.p_value, least)
                << name << ": chi-square " << test.value << " with " << test.degrees_of_freedom
                << " degrees of freedom, tables in " << dump(test, name);
        }
    }
}

}  // namespace
}  // namespace understudy
