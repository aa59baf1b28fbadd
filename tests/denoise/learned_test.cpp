// The trained network on made-up pictures. Needs the weights that setting up fetches.
#include <gtest/gtest.h>
#include <tbb/global_control.h>

#include "denoise/denoiser.h"
#include "denoise/learned.h"
#include "noisy.h"

namespace understudy {
namespace {

class Learned : public testing::Test {
  protected:
    void SetUp() override {
        if (!std::filesystem::exists(UNDERSTUDY_DENOISER_FILE)) GTEST_SKIP() << "the weights have not been fetched";
        const auto weights = read_weights(UNDERSTUDY_DENOISER_FILE);
        ASSERT_TRUE(weights);
        auto network = Network::of(*weights, UNDERSTUDY_DENOISER_FILE);
        ASSERT_TRUE(network);
        network_.emplace(std::move(*network));
    }
    std::optional<Network> network_;
};

// A fixpoint: where there is no noise there is nothing to take away.
TEST_F(Learned, APictureWithoutNoiseComesBackWithinOnePercent) {
    const Made made = two_boards(160, 128, 4, 1);
    EXPECT_LT(apart(denoise_learned(*network_, made.truth, made.features), made.truth), 0.01);
}

TEST_F(Learned, TakesNearlyAllOfTheNoise) {
    const Made made = two_boards(160, 128, 8, 2);
    const Picture clean = denoise_learned(*network_, made.noisy, made.features);
    EXPECT_LT(apart(clean, made.truth), 0.12 * apart(made.noisy, made.truth));
}

// What lies beyond the network's reach changes nothing, so tiles that overlap by it are the whole.
TEST_F(Learned, TilesMakeTheSamePictureAsTheWhole) {
    const Made made = two_boards(608, 64, 4, 3);
    const Picture whole = denoise_learned(*network_, made.noisy, made.features);
    const Picture tiled = denoise_learned(*network_, made.noisy, made.features, 480);
    for (std::size_t i = 0; i < whole.pixels.size(); ++i) {
        ASSERT_NEAR(tiled.pixels[i].y, whole.pixels[i].y, 1e-4F * whole.pixels[i].y + 1e-6F) << i;
    }
}

// As large as a preview, where the library's convolutions share their work out.
TEST_F(Learned, TheSameForAnyNumberOfThreads) {
    const Made made = two_boards(320, 400, 4, 5);
    const auto by_threads = [&](std::size_t threads) {
        const tbb::global_control most(tbb::global_control::max_allowed_parallelism, threads);
        return denoise_learned(*network_, made.noisy, made.features);
    };
    const Picture one = by_threads(1);
    EXPECT_EQ(by_threads(2).pixels, one.pixels);
    EXPECT_EQ(by_threads(3).pixels, one.pixels);
}

// Dimming one thing must not shift another: the scale is the camera's exposure and not the picture's brightness.
TEST_F(Learned, ADimmedBoardLeavesTheOtherAsBrightAsItWas) {
    Made made = two_boards(160, 128, 4, 4);
    const Picture before = denoise_learned(*network_, made.truth, made.features);
    for (std::size_t y = 0; y < 128; ++y) {
        for (std::size_t x = 80; x < 160; ++x) made.truth.pixels[y * 160 + x] *= 0.05F;
    }
    const Picture after = denoise_learned(*network_, made.truth, made.features);
    for (std::size_t y = 16; y < 112; ++y) {
        const std::size_t at = y * 160 + 30;
        EXPECT_NEAR(after.pixels[at].y / before.pixels[at].y, 1.0F, 0.01F);
    }
}

TEST_F(Learned, APixelThatIsNoNumberStaysSeen) {
    Made made = two_boards(64, 64, 8, 3);
    made.noisy.pixels[30 * 64 + 30] = Vec3(INFINITY);
    EXPECT_EQ(count_non_finite(denoise_learned(*network_, made.noisy, made.features)), 3U);
}

TEST(Denoiser, GoesOnWithoutWeightsAndNotWithDamagedOnes) {
    const auto without = Denoiser::open("/nowhere/weights.tza");
    ASSERT_TRUE(without);
    EXPECT_FALSE(without->is_learned());
    EXPECT_FALSE(Denoiser::open(__FILE__)) << "this is no file of weights";
}

}  // namespace
}  // namespace understudy
