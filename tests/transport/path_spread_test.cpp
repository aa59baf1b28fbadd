// Where paths go: to the noise, for the same work, and without a bias.
#include "transport/path_spread.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "scatter/random_stream.h"

namespace understudy {
namespace {

constexpr std::size_t kPixels = 256;

struct Ground {
    double noise;
    double rays_a_path;
};

PathSpread spread_over(const std::vector<Ground>& grounds) {
    PathSpread spread(std::vector<std::size_t>(grounds.size(), kPixels));
    spread.plan(4);
    for (std::size_t t = 0; t < grounds.size(); ++t) {
        spread.learn(t, grounds[t].noise, grounds[t].rays_a_path * 4 * kPixels);
    }
    return spread;
}

TEST(PathSpread, IsEvenAtFirst) {
    PathSpread spread({kPixels, 3});
    for (const int done : {0, 4, 8}) {
        spread.plan(4);
        for (const std::size_t t : {0U, 1U}) {
            EXPECT_EQ(spread[t].first, done);
            EXPECT_EQ(spread[t].count, 4);
        }
    }
}

// Neyman 1934: in proportion to the root of the noise over the cost, here within the powers of two that there are.
TEST(PathSpread, GoesToTheNoiseForTheSameWork) {
    const std::vector<Ground> grounds{{0.04, 5.0}, {1.0, 5.0}, {1.0, 80.0}, {0.0, 3.0}, {0.3, 20.0}};
    PathSpread spread = spread_over(grounds);
    spread.plan(16);
    double work = 0.0;
    double even = 0.0;
    for (std::size_t t = 0; t < grounds.size(); ++t) {
        work += spread[t].count * grounds[t].rays_a_path;
        even += 16 * grounds[t].rays_a_path;
    }
    EXPECT_LE(work, even);
    EXPECT_GT(work, 0.6 * even);
    EXPECT_EQ(spread[3].count, 4);  // a quarter of the mean at least, or nothing would be found there any more
    // √(1 / 5) over √(0.04 / 5), and over √(1 / 80).
    EXPECT_NEAR(std::log2(spread[1].count / static_cast<double>(spread[0].count)), std::log2(5.0), 1.0);
    EXPECT_NEAR(std::log2(spread[1].count / static_cast<double>(spread[2].count)), 2.0, 1.0);
}

// A path's number is used once, and blocks of a power of two begin where they are stratified.
TEST(PathSpread, UsesEveryNumberOnce) {
    RandomStream random(3);
    PathSpread spread(std::vector<std::size_t>(20, kPixels));
    std::vector<int> used(20, 0);
    for (const int mean : {4, 4, 8, 16, 32}) {
        spread.plan(mean);
        for (std::size_t t = 0; t < used.size(); ++t) {
            EXPECT_GE(spread[t].first, used[t]);
            EXPECT_EQ(spread[t].first % spread[t].count, 0);
            used[t] = spread[t].first + spread[t].count;
            const Vec3 u = random.next3();
            spread.learn(t, static_cast<double>(u.x * u.x), static_cast<double>(1.0F + u.y) * spread[t].count);
        }
    }
}

// Pixels that are bright by a rare path, one in a hundred, beside dull ones: those found bright early get more paths
// later. As render.h books them, by the pass's mean count, they stay right on the mean; were a pixel's paths all
// weighed alike, the bright ones would be thinned out. 99.9 % confidence.
TEST(PathSpread, DoesNotThinOutWhatIsRare) {
    constexpr std::size_t kTiles = 64;
    constexpr int kRuns = 400;
    constexpr double kChance = 0.01;
    RandomStream random(11);
    double sum = 0.0;
    double squares = 0.0;
    double alike = 0.0;
    for (int run = 0; run < kRuns; ++run) {
        PathSpread spread(std::vector<std::size_t>(kTiles, 1));
        std::vector<double> mean(kTiles, 0.0);
        std::vector<double> found(kTiles, 0.0);
        std::vector<int> paths(kTiles, 0);
        int done = 0;
        for (const int pass : {4, 4, 8, 16}) {
            spread.plan(pass);
            for (std::size_t t = 0; t < kTiles; ++t) {
                double bright = 0.0;
                for (int k = 0; k < spread[t].count; ++k)
                    bright += static_cast<double>(random.next3().x) < kChance ? 1.0 / kChance : 0.0;
                const double here = bright / spread[t].count;
                spread.learn(t, here * here, spread[t].count);
                mean[t] = (done * mean[t] + pass * here) / (done + pass);
                found[t] += bright;
                paths[t] += spread[t].count;
            }
            done += pass;
        }
        for (std::size_t t = 0; t < kTiles; ++t) {
            sum += mean[t];
            squares += mean[t] * mean[t];
            alike += found[t] / paths[t];
        }
    }
    constexpr double kAll = static_cast<double>(kRuns) * kTiles;
    const double spread_of_mean = std::sqrt((squares / kAll - (sum / kAll) * (sum / kAll)) / kAll);
    EXPECT_NEAR(sum / kAll, 1.0, 3.29 * spread_of_mean);
    EXPECT_LT(alike / kAll, 1.0 - 3.29 * spread_of_mean);  // else this test could not tell
}

}  // namespace
}  // namespace understudy
