// Conservation of energy: what leaves a front of 1 lm is caught by a closed ball round it.
#include "kit/flash_energy.h"

#include <gtest/gtest.h>

#include "kit/irradiance.h"
#include "kit/kit_shapes.h"

namespace understudy {
namespace {

TEST(Flux, AFrontOfOneLumenGivesOneLumen) {
    const PlacedFront front = slanted_front();
    constexpr double kRadius = 2.5;
    constexpr int kTurns = 12;
    for (const NamedShape& named : every_shape()) {
        SCOPED_TRACE(named.name);
        const Emitter emitter(named.shape, front, named.table);
        // The edges of a window's bars are jumps in the grid.
        const int side = std::holds_alternative<WindowShape>(named.shape) ? 96 : 24;
        // Of equal area; a table's cut-off and the shadow of an umbrella's head are narrow.
        const int bands = named.table ? 400 : std::holds_alternative<UmbrellaShape>(named.shape) ? 200 : 48;
        double flux = 0.0;
        for (int i = 0; i < bands; ++i) {
            const double height = 1.0 - 2.0 * (i + 0.5) / bands;
            const double across = std::sqrt(1.0 - height * height);
            for (int j = 0; j < kTurns; ++j) {
                const double turn = 2.0 * kPiDouble * (j + 0.5) / kTurns;
                const Double3 out =
                    height * front.axis + across * std::cos(turn) * front.right + across * std::sin(turn) * front.up;
                const auto seed = static_cast<std::uint32_t>(i * kTurns + j);  // errors are to cancel, not to add up
                const Vec3 receiver(front.centre + kRadius * out);
                const double lx = irradiance_of(emitter, receiver, Vec3(-out), Response::kFlat, side, seed).mean *
                                  static_cast<double>(emitter.even_radiance());
                flux += lx * 4.0 * kPiDouble * kRadius * kRadius / (bands * kTurns);
            }
        }
        EXPECT_NEAR(flux, 1.0, 0.003);
    }
}

// A bare tube gives the pack's joules times the efficacy; a front passes its share on.
TEST(Flux, JoulesAndLumenSecondsLeadBackToEachOther) {
    EXPECT_DOUBLE_EQ(luminous_energy(100.0, 0.5), 100.0 * kFlashEfficacy * 0.5);
    EXPECT_DOUBLE_EQ(joules_for(luminous_energy(73.0, 0.31), 0.31), 73.0);
    // Published figures for studio systems run from 15 to 50 lm·s/J: makers' pages, common practice.
    EXPECT_GE(kFlashEfficacy, 15.0);
    EXPECT_LE(kFlashEfficacy, 50.0);
}

}  // namespace
}  // namespace understudy
