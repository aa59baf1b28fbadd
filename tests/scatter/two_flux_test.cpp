#include "scatter/two_flux.h"

#include <array>
#include <cmath>

#include <gtest/gtest.h>

#include "scatter/fresnel.h"

namespace understudy {
namespace {

// M. A. Heaslet and R. F. Warming, "Radiative Transport and Wall Temperature Slip in an Absorbing Planar Medium", 1965:
// the exact share of diffuse light that crosses a slab which scatters evenly and absorbs nothing (from memory).
TEST(TwoFlux, LetsThroughWhatAScatteringSlabDoes) {
    struct Row {
        double depth, exact;
    };
    constexpr std::array<Row, 5> kRows = {{{0.1, 0.9157}, {0.5, 0.7040}, {1.0, 0.5532}, {2.0, 0.3900}, {3.0, 0.3016}}};
    for (const Row& row : kRows) {
        const Layer layer = two_flux_layer(1e-9, 1.0, row.depth);
        EXPECT_NEAR(layer.transmittance, row.exact, 0.03) << row.depth;
        EXPECT_NEAR(layer.reflectance + layer.transmittance, 1.0, 1e-6);
    }
}

// Diffuse light through a slab that only absorbs keeps 2 E₃(depth): Abramowitz and Stegun, table 5.4.
TEST(TwoFlux, LetsThroughWhatAnAbsorbingSlabDoes) {
    EXPECT_NEAR(two_flux_layer(1.0, 1e-9, 0.5).transmittance, 2.0 * 0.2216, 0.05);
    EXPECT_NEAR(two_flux_layer(1.0, 1e-9, 1.0).transmittance, 2.0 * 0.1097, 0.05);
}

// S. Chandrasekhar, Radiative Transfer, 1950: diffuse light on a half-space that scatters evenly comes back as
// 1 − 2 √(1 − ω) ∫ H µ dµ, and H solves 1 / H(µ) = √(1 − ω) + ω/2 ∫ H(ν) ν / (µ + ν) dν.
double exact_half_space(double omega) {
    constexpr std::size_t kSteps = 200;
    const double root = std::sqrt(1.0 - omega);
    const auto cosine = [](std::size_t i) { return (static_cast<double>(i) + 0.5) / static_cast<double>(kSteps); };
    std::array<double, kSteps> h{};
    h.fill(1.0);
    for (int round = 0; round < 200; ++round) {
        for (std::size_t i = 0; i < kSteps; ++i) {
            double sum = 0.0;
            for (std::size_t j = 0; j < kSteps; ++j) sum += h[j] * cosine(j) / (cosine(i) + cosine(j));
            h[i] = 1.0 / (root + 0.5 * omega * sum / static_cast<double>(kSteps));
        }
    }
    double moment = 0.0;
    for (std::size_t i = 0; i < kSteps; ++i) moment += h[i] * cosine(i) / static_cast<double>(kSteps);
    return 1.0 - 2.0 * root * moment;
}

TEST(TwoFlux, SendsBackWhatAHalfSpaceDoes) {
    for (const double omega : {0.5, 0.8, 0.9, 0.95, 0.99})
        EXPECT_NEAR(two_flux_half_space(1.0 - omega, omega), exact_half_space(omega), 0.05) << omega;
}

// Kubelka 1954: where a layer is cut must not matter; and a thick layer has no end.
TEST(TwoFlux, AddsLayersToTheWhole) {
    const double whole = reflectance_over(two_flux_layer(3.0, 40.0, 0.05), 0.3);
    const double upper =
        reflectance_over(two_flux_layer(3.0, 40.0, 0.02), reflectance_over(two_flux_layer(3.0, 40.0, 0.03), 0.3));
    EXPECT_NEAR(whole, upper, 1e-12);
    EXPECT_NEAR(two_flux_layer(3.0, 40.0, 1000.0).reflectance, two_flux_half_space(3.0, 40.0), 1e-12);
    EXPECT_EQ(two_flux_layer(3.0, 40.0, 1000.0).transmittance, 0.0);
}

// Fresnel's equations over all directions from within; for an index of 1.5 Saunderson 1942 gives 0.596 (from memory).
TEST(TwoFlux, KeepsWhatFresnelKeepsInside) {
    EXPECT_NEAR(internal_reflectance(1.5), 0.596, 0.005);
    for (const double index : {1.3, 1.4, 1.5}) {
        constexpr int kSteps = 4000;
        double sum = 0.0;
        for (int i = 0; i < kSteps; ++i) {
            const double cosine = (i + 0.5) / kSteps;
            const float reflected = dielectric_fresnel(static_cast<float>(cosine), static_cast<float>(1.0 / index));
            sum += 2.0 * cosine * static_cast<double>(reflected) / kSteps;
        }
        EXPECT_NEAR(internal_reflectance(index), sum, 0.01) << index;
    }
    EXPECT_EQ(reflectance_through_boundary(1.0, 0.5), 1.0);
}

}  // namespace
}  // namespace understudy
