// Cloth's folds and grain.
#include "sitter/wardrobe/folds.h"

#include <random>

#include <gtest/gtest.h>

namespace understudy {
namespace {

// The slope that is said is the one that the noise has: its central differences, over a thousandth of a cell.
TEST(GradientNoise, SaysItsOwnSlope) {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> anywhere(-20.0, 20.0);
    constexpr double kApart = 1e-3;
    for (int k = 0; k < 200; ++k) {
        const Double3 place(anywhere(random), anywhere(random), anywhere(random));
        const SlopedNoise here = sloped_gradient_noise(place, 7);
        EXPECT_EQ(here.noise, gradient_noise(place, 7));
        for (glm::length_t axis = 0; axis < 3; ++axis) {
            Double3 step(0.0);
            step[axis] = kApart;
            const double rise = gradient_noise(place + step, 7) - gradient_noise(place - step, 7);
            EXPECT_NEAR(here.slope[axis], rise / (2.0 * kApart), 1e-4) << k << " " << axis;
        }
    }
}

}  // namespace
}  // namespace understudy
