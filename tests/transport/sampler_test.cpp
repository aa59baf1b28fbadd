// The sampler's numbers: stratified within a group, independent between groups, the same for the same key.
#include "transport/sampler.h"

#include <set>

#include <gtest/gtest.h>

#include "scatter/random_stream.h"

namespace understudy {
namespace {

// A power-of-two prefix of a Sobol sequence has one point in each elementary interval of its first two dimensions
// (a (0, 2)-sequence: Sobol' 1967); Owen's scramble keeps that (Owen 1995). Every single dimension is a (0,
// 1)-sequence.
TEST(Sampler, PowersOfTwoFillEveryDimension) {
    for (const std::uint32_t group : {0U, 1U, 2U, 77U, 65536U}) {
        for (const std::uint32_t count : {1U, 4U, 16U, 64U, 256U, 4096U}) {
            for (glm::length_t d = 0; d < 4; ++d) {
                std::set<std::uint32_t> cells;
                for (std::uint32_t i = 0; i < count; ++i) {
                    const float x = Sampler(3, 1234, i).group(group)[d];
                    ASSERT_GE(x, 0.0F);
                    ASSERT_LT(x, 1.0F);
                    cells.insert(static_cast<std::uint32_t>(x * static_cast<float>(count)));
                }
                EXPECT_EQ(cells.size(), count) << "group " << group << " dimension " << d;
            }
        }
    }
}

TEST(Sampler, PowersOfTwoFillElementaryIntervals) {
    for (const std::uint32_t group : {0U, 5U}) {
        for (const std::uint32_t bits : {4U, 6U, 10U}) {
            for (std::uint32_t wide = 0; wide <= bits; ++wide) {
                std::set<std::uint32_t> cells;
                for (std::uint32_t i = 0; i < (1U << bits); ++i) {
                    const Vec4 u = Sampler(9, 7, i).group(group);
                    const auto column = static_cast<std::uint32_t>(u.x * static_cast<float>(1U << wide));
                    const auto row = static_cast<std::uint32_t>(u.y * static_cast<float>(1U << (bits - wide)));
                    cells.insert((column << (bits - wide)) | row);
                }
                EXPECT_EQ(cells.size(), 1U << bits) << wide << " of " << bits;
            }
        }
    }
}

// Blocks of a power of two that follow each other are stratified each by itself: passes double.
TEST(Sampler, EveryPassIsStratified) {
    for (const std::uint32_t start : {64U, 128U, 4096U}) {
        std::set<std::uint32_t> cells;
        for (std::uint32_t i = 0; i < 64; ++i) {
            cells.insert(static_cast<std::uint32_t>(Sampler(0, 0, start + i).group(4).z * 64.0F));
        }
        EXPECT_EQ(cells.size(), 64U);
    }
}

TEST(Sampler, TheSameKeyGivesTheSameNumbers) {
    EXPECT_EQ(Sampler(1, 2, 3).group(4), Sampler(1, 2, 3).group(4));
    EXPECT_NE(Sampler(1, 2, 3).group(4), Sampler(2, 2, 3).group(4));
    EXPECT_NE(Sampler(1, 2, 3).group(4), Sampler(1, 3, 3).group(4));
    EXPECT_NE(Sampler(1, 2, 3).group(4), Sampler(1, 2, 4).group(4));
    EXPECT_NE(Sampler(1, 2, 3).group(4), Sampler(1, 2, 3).group(5));
}

// The correlation of n independent pairs strays by 1/√n; five of that.
TEST(Sampler, GroupsAndPixelsAreUncorrelated) {
    constexpr int kPixels = 400;
    constexpr int kSamples = 16;
    double groups = 0.0;
    double pixels = 0.0;
    for (std::uint32_t p = 0; p < kPixels; ++p) {
        for (std::uint32_t i = 0; i < kSamples; ++i) {
            const Sampler here(0, p, i);
            const Vec4 a = here.group(2) - 0.5F;
            const Vec4 b = here.group(3) - 0.5F;
            const Vec4 c = Sampler(0, p + 1, i).group(2) - 0.5F;
            for (glm::length_t d = 0; d < 4; ++d) {
                groups += static_cast<double>(a[d] * b[(d + 1) % 4] + a[d] * b[d]);
                pixels += static_cast<double>(a[d] * c[d]);
            }
        }
    }
    // Each product has the mean 0 and the variance 1/144.
    const double n = kPixels * kSamples * 4.0;
    EXPECT_LT(std::abs(groups), 5.0 * std::sqrt(2.0 * n / 144.0));
    EXPECT_LT(std::abs(pixels), 5.0 * std::sqrt(n / 144.0));
}

// Owen 1997: scrambled nets never lose to random numbers by more than a constant, and win on smooth integrands.
TEST(Sampler, BeatsRandomNumbersOnASmoothIntegrand) {
    const auto integrand = [](const Vec4& u) {
        return static_cast<double>((0.5F + u.x) * (0.5F + u.y * u.y) * std::exp(u.z) * std::cos(u.w));
    };
    // ∫ = 1 · (1/2 + 1/3) · (e − 1) · sin 1
    const double truth = 5.0 / 6.0 * (std::exp(1.0) - 1.0) * std::sin(1.0);
    RandomStream random(1);
    double sobol_error = 0.0;
    double random_error = 0.0;
    double bias = 0.0;
    constexpr int kRuns = 400;
    for (std::uint32_t run = 0; run < kRuns; ++run) {
        double sobol_mean = 0.0;
        double random_mean = 0.0;
        for (std::uint32_t i = 0; i < 64; ++i) {
            sobol_mean += integrand(Sampler(5, run, i).group(6)) / 64.0;
            const Vec3 a = random.next3();
            const float b = random.next();
            random_mean += integrand({a, b}) / 64.0;
        }
        sobol_error += std::pow(sobol_mean - truth, 2.0);
        random_error += std::pow(random_mean - truth, 2.0);
        bias += (sobol_mean - truth) / kRuns;
    }
    EXPECT_GT(random_error / sobol_error, 2.0);
    EXPECT_LT(std::abs(bias), 4.0 * std::sqrt(sobol_error) / kRuns);
}

}  // namespace
}  // namespace understudy
