// The filter without trained weights: it takes noise away, and nothing else.
#include <gtest/gtest.h>

#include "denoise/a_trous.h"
#include "noisy.h"

namespace understudy {
namespace {

TEST(ATrous, LeavesAPictureWithoutNoiseAsItIs) {
    const Made made = two_boards(320, 64, 4, 1);
    // Light that falls off evenly is its own mean; only at the picture's edge has the mean one side.
    EXPECT_LT(apart(denoise_a_trous(made.truth, made.features, 64), made.truth), 0.01);
}

TEST(ATrous, TakesMostOfTheNoiseAndKeepsTheEdge) {
    for (const int samples : {4, 16}) {
        const Made made = two_boards(96, 64, samples, 2);
        const Picture clean = denoise_a_trous(made.noisy, made.features, samples);
        EXPECT_LT(apart(clean, made.truth), 0.35 * apart(made.noisy, made.truth)) << samples;
        // Albedo is divided out: the step between the boards is as steep as it was.
        for (int y = 8; y < 56; ++y) {
            const std::size_t at = static_cast<std::size_t>(y) * 96 + 47;
            EXPECT_GT(clean.pixels[at].y / clean.pixels[at + 1].y, 2.4F) << "of 4, with the noise that is left";
        }
    }
}

TEST(ATrous, APixelThatIsNoNumberStaysSeenAndSpoilsNoOther) {
    Made made = two_boards(32, 32, 8, 3);
    const std::size_t at = 16 * 32 + 8;
    made.noisy.pixels[at] = Vec3(NAN);
    const Picture clean = denoise_a_trous(made.noisy, made.features, 8);
    EXPECT_EQ(count_non_finite(clean), 3U);
    EXPECT_TRUE(std::isnan(clean.pixels[at].x));
}

}  // namespace
}  // namespace understudy
