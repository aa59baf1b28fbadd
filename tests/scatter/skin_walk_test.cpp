#include "scatter/skin_walk.h"

#include <array>
#include <cmath>

#include <gtest/gtest.h>

#include "scatter/microfacet.h"
#include "scatter/skin.h"
#include "scatter/two_flux.h"

namespace understudy {
namespace {

// Below z = 0, down to a floor that may be far.
struct Slab {
    struct Wall {
        float distance;
        bool floor;
    };
    float depth = kInfinity;

    bool free(const Vec3& from, float distance) const { return distance < -from.z && distance < from.z + depth; }
    std::optional<Wall> wall(const Ray& ray) const {
        if (ray.direction.z == 0.0F) return std::nullopt;  // level
        const bool up = ray.direction.z > 0.0F;
        const float distance = up ? -ray.origin.z / ray.direction.z : (ray.origin.z + depth) / -ray.direction.z;
        if (!(distance < ray.far)) return std::nullopt;
        return Wall{distance, !up};
    }
    bool contains(const Wall&) const { return true; }
    float sends_back(const Wall&) const { return 0.0F; }
    Vec3 mirrored(const Wall&, const Vec3& way) const { return way; }
};

constexpr std::uint32_t kSeed = 7;

struct Sums {
    std::array<double, 4> back{}, through{}, square{};
    double steps = 0.0, rays = 0.0;
    int capped = 0;
};

enum class Entry { kDiffuse, kRefracted };

// Diffuse light from outside a medium of this index, just inside.
Vec3 entry_direction(Entry entry, float index, float u, float v) {
    if (entry == Entry::kDiffuse) return -sample_cosine(u, v);
    const float sine = std::sqrt(u) / index;
    return {sine * std::cos(2.0F * kPi * v), sine * std::sin(2.0F * kPi * v), -std::sqrt(1.0F - sine * sine)};
}

Sums follow(const SkinMedium& medium, const Slab& slab, int walks, const WalkTuning& tuning,
            Entry entry = Entry::kDiffuse, float index = 1.0F) {
    Sums sums;
    for (int i = 0; i < walks; ++i) {
        SkinWalkNumbers numbers(kSeed + 7919U * static_cast<std::uint32_t>(i));
        const float u = numbers.next();
        const Vec3 direction = entry_direction(entry, index, u, numbers.next());
        const WalkStart start{Vec3(0.0F), {0.0F, 0.0F, 1.0F}, direction, slab.depth};
        const auto result = walk_through_skin(medium, start, slab, numbers, tuning);
        sums.steps += result.steps;
        sums.rays += result.rays;
        sums.capped += result.end == WalkEnd::kCapped ? 1 : 0;
        if (result.end != WalkEnd::kEmerged) continue;
        for (int k = 0; k < 4; ++k) {
            const auto at = static_cast<std::size_t>(k);
            const auto light = static_cast<double>(result.throughput[k]);
            (result.wall->floor ? sums.through : sums.back)[at] += light / walks;
            sums.square[at] += light * light / walks;
        }
    }
    return sums;
}

SkinMedium medium_of(const Four& scattered, const Four& mean_free_path_m) {
    return {scattered, 1.0F / mean_free_path_m};
}

constexpr WalkTuning kPlain{0.0F, false, false};

// Jensen 2001's mean free paths in red, green and blue, and one more.
constexpr Four kPaths{1.30e-3F, 0.95e-3F, 0.67e-3F, 1.0e-3F};

TEST(SkinWalk, TakesTheExponentialRight) {
    for (float x = -79.0F; x < 20.0F; x += 0.37F) {
        const Four y = exponential(all_four(x));
        EXPECT_NEAR(static_cast<double>(y[1]), std::exp(static_cast<double>(x)),
                    4e-7 * std::exp(static_cast<double>(x)));
    }
}

// Jensen and others 2001, from their table of measured skins.
TEST(SkinMedium, HasTheMeasuredMeanFreePaths) {
    EXPECT_NEAR(skin_mean_free_path_m(650.0), 1.30e-3, 0.10e-3);
    EXPECT_NEAR(skin_mean_free_path_m(550.0), 0.95e-3, 0.10e-3);
    EXPECT_NEAR(skin_mean_free_path_m(450.0), 0.67e-3, 0.10e-3);
}

// K. M. Case and P. F. Zweifel, Linear Transport Theory, 1967, table of ν = 1/κ (from memory).
TEST(SkinMedium, DiesAwayAsTransportTheorySays) {
    EXPECT_NEAR(diffuse_decay(0.99F), 1.0F / 5.7967F, 1e-3F);
    EXPECT_NEAR(diffuse_decay(0.9F), 1.0F / 1.9032F, 1e-3F);
    EXPECT_NEAR(diffuse_decay(0.8F), 1.0F / 1.4076F, 1e-3F);
    EXPECT_NEAR(diffuse_decay(0.5F), 1.0F / 1.0444F, 1e-3F);
}

// The colour comes back out of the walk, for light, middling and dark skin's red, green and blue: within half a per
// cent and three standard errors.
TEST(SkinWalk, SendsBackTheColourThatWasAskedFor) {
    constexpr std::array<Four, 3> kColours = {Four{0.78F, 0.56F, 0.46F, 0.65F}, Four{0.55F, 0.32F, 0.22F, 0.40F},
                                              Four{0.20F, 0.12F, 0.08F, 0.15F}};
    for (const Four& colour : kColours) {
        const SkinMedium medium = medium_of(single_scattering(colour), kPaths);
        constexpr int kWalks = 200000;
        const Sums sums = follow(medium, Slab{}, kWalks, {});
        for (std::size_t k = 0; k < 4; ++k) {
            const auto wanted = static_cast<double>(colour[static_cast<int>(k)]);
            const double error = std::sqrt((sums.square[k] - sums.back[k] * sums.back[k]) / kWalks);
            EXPECT_LT(4.0 * error, 0.008 * wanted + 0.001);
            EXPECT_NEAR(sums.back[k], wanted, 0.005 * wanted + 3.0 * error) << k;
        }
        EXPECT_LT(sums.capped, kWalks / 500);
    }
}

// Guiding, roulette and the free distance change the noise and not the mean.
TEST(SkinWalk, MeansTheSameHoweverItIsDrawn) {
    const SkinMedium medium = medium_of(Four{0.988F, 0.938F, 0.890F, 0.96F}, kPaths);
    constexpr int kWalks = 150000;
    const Sums plain = follow(medium, Slab{}, kWalks, kPlain);
    for (const WalkTuning tuning :
         {WalkTuning{0.0F, true, true}, WalkTuning{0.5F, true, false}, WalkTuning{0.9F, false, true}}) {
        const Sums other = follow(medium, Slab{}, kWalks, tuning);
        for (std::size_t k = 0; k < 4; ++k) {
            const double error = std::sqrt((plain.square[k] + other.square[k]) / kWalks);
            EXPECT_NEAR(other.back[k], plain.back[k], 3.5 * error) << k;
        }
    }
}

// M. A. Heaslet and R. F. Warming, "Radiative Transport and Wall Temperature Slip in an Absorbing Planar Medium", 1965:
// the exact share of diffuse light that crosses a slab which scatters evenly and absorbs nothing (from memory).
TEST(SkinWalk, SendsBackWhatSixSlabsDo) {
    struct Row {
        float depth;
        double exact;
    };
    constexpr std::array<Row, 6> kRows = {
        {{0.1F, 0.9157}, {0.5F, 0.7040}, {1.0F, 0.5532}, {2.0F, 0.3900}, {3.0F, 0.3016}, {5.0F, 0.2077}}};
    for (const Row& row : kRows) {
        // The same optical depth at all four, so that all four must agree.
        const SkinMedium medium = medium_of(all_four(1.0F), all_four(1e-3F));
        const Sums sums = follow(medium, Slab{row.depth * 1e-3F}, 100000, {});
        EXPECT_NEAR(sums.through[0], row.exact, 0.005) << row.depth;
        EXPECT_NEAR(sums.back[0], 1.0 - row.exact, 0.005) << row.depth;
        EXPECT_EQ(sums.capped, 0);
    }
}

// White furnace: a slab in even light from both sides that takes nothing up is as bright as that light.
TEST(SkinWalk, LosesNothingInAWhiteFurnace) {
    const SkinMedium medium = medium_of(all_four(1.0F), kPaths);
    constexpr int kWalks = 100000;
    const Sums sums = follow(medium, Slab{6e-3F}, kWalks, {});
    for (std::size_t k = 0; k < 4; ++k) {
        const double all = sums.back[k] + sums.through[k];
        EXPECT_NEAR(all, 1.0, 3.5 * std::sqrt(std::max(0.0, sums.square[k] - all * all) / kWalks) + 1e-6) << k;
    }
    EXPECT_LE(sums.capped, kWalks / 10000);
}

// H. W. Jensen and others, "A Practical Model for Subsurface Light Transport", SIGGRAPH 2001: reduced scattering and
// absorption of two skins (1/mm; red, green, blue) and the diffuse reflectances they state, for an index of 1.3. Light
// goes in refracted, and what meets the boundary from within evenly is kept by Fresnel's share (scatter/two_flux.h).
TEST(SkinWalk, ReflectsAsTwoMeasuredSkins) {
    struct Measured {
        Four scattering, absorption;
        std::array<double, 3> reflectance;
    };
    constexpr std::array<Measured, 2> kSkins = {
        {{{0.74F, 0.88F, 1.01F, 1.01F}, {0.032F, 0.17F, 0.48F, 0.48F}, {0.44, 0.22, 0.13}},
         {{1.09F, 1.59F, 1.79F, 1.79F}, {0.013F, 0.070F, 0.145F, 0.145F}, {0.63, 0.44, 0.34}}}};
    constexpr float kIndex = 1.3F;
    const double kept = internal_reflectance(static_cast<double>(kIndex));
    for (const Measured& skin : kSkins) {
        const Four extinction = skin.scattering + skin.absorption;
        const SkinMedium medium{skin.scattering / extinction, 1000.0F * extinction};
        const Sums first = follow(medium, Slab{}, 100000, {}, Entry::kRefracted, kIndex);
        const Sums again = follow(medium, Slab{}, 100000, {});
        for (std::size_t k = 0; k < 3; ++k) {
            const double reflectance = first.back[k] * (1.0 - kept) / (1.0 - kept * again.back[k]);
            EXPECT_NEAR(reflectance, skin.reflectance[k], 0.02) << k;
        }
    }
}

// What a shadow's straight edge on flat skin lets through into the dark: walks that come out where light is, that is
// more than `from` beyond the edge.
Four beyond_edge(const SkinMedium& medium, float from, int walks) {
    Four lit{};
    for (int i = 0; i < walks; ++i) {
        SkinWalkNumbers numbers(kSeed + 7919U * static_cast<std::uint32_t>(i));
        const float u = numbers.next();
        const Vec3 direction = -sample_cosine(u, numbers.next());
        // The place of the wall follows from the steps alone: a flesh that keeps it.
        struct Kept : Slab {
            struct Wall {
                float distance;
                float x;
            };
            std::optional<Wall> wall(const Ray& ray) const {
                const auto met = Slab::wall(ray);
                if (!met) return std::nullopt;
                return Wall{met->distance, ray.at(met->distance).x};
            }
            bool contains(const Wall&) const { return true; }
            float sends_back(const Wall&) const { return 0.0F; }
            Vec3 mirrored(const Wall&, const Vec3& way) const { return way; }
        };
        const auto result = walk_through_skin(medium, {Vec3(0.0F), {0.0F, 0.0F, 1.0F}, direction}, Kept{}, numbers, {});
        if (result.end == WalkEnd::kEmerged && result.wall->x > from)
            lit += result.throughput / static_cast<float>(walks);
    }
    return lit;
}

// A hard edge of light on flat skin bleeds into the dark, red farthest. Outside values: the same edge by the dipole for
// this medium with nothing to hold light back at its surface (Jensen and others 2001, eq. 4), summed over the lit half
// by a program of its own. Diffusion is too bright near the edge, but falls off as it should.
TEST(SkinWalk, BleedsIntoTheDarkRedFarthest) {
    const Four colour{0.78F, 0.56F, 0.46F, 0.56F};
    const SkinMedium medium = medium_of(single_scattering(colour), kPaths);
    constexpr int kWalks = 150000;
    const auto beyond = [&](float from) { return beyond_edge(medium, from, kWalks) / colour; };
    const Four edge = beyond(0.0F);
    for (int k = 0; k < 4; ++k) EXPECT_NEAR(edge[k], 0.5F, 0.01F) << k;
    constexpr std::array<std::array<float, 2>, 3> kDipole = {
        {{0.1912F, 0.0440F}, {0.0900F, 0.0201F}, {0.1237F, 0.0328F}}};
    constexpr std::array<std::array<float, 2>, 3> kAt = {{{2e-3F, 6e-3F}, {2e-3F, 4e-3F}, {1e-3F, 2e-3F}}};
    for (std::size_t k = 0; k < 3; ++k) {
        const float near = beyond(kAt[k][0])[static_cast<int>(k)];
        const float far = beyond(kAt[k][1])[static_cast<int>(k)];
        EXPECT_GT(near, 0.6F * kDipole[k][0]) << k;
        EXPECT_LT(near, kDipole[k][0]) << k;
        EXPECT_NEAR(std::log(near / far), std::log(kDipole[k][0] / kDipole[k][1]), 0.1F) << k;
    }
    const Four near = beyond(1e-3F);
    EXPECT_GT(near[0], 1.3F * near[1]);
    EXPECT_GT(near[1], 1.3F * near[2]);
}

}  // namespace
}  // namespace understudy
