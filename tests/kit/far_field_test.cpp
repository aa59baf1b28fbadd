// Figures of a light from far away, against Lambert's law for an even, diffuse front.
#include "kit/far_field.h"

#include <gtest/gtest.h>

namespace understudy {
namespace {

// 1 lm from a diffuser: 1/π lm/sr on the axis, half of it 60 degrees off (Lambert's cosine law).
TEST(FarField, AnEvenFrontFollowsTheCosine) {
    const Emitter front = emitter_alone(RectangleShape{0.6, 0.9});
    EXPECT_NEAR(axial_intensity(front), 1.0 / kPiDouble, 1e-4);
    EXPECT_NEAR(mean_intensity(front, radians(40.0)), std::cos(radians(40.0)) / kPiDouble, 1e-4);
    ASSERT_TRUE(opening_angle(front));
    EXPECT_NEAR(degrees(*opening_angle(front)), 120.0, 0.1);
    ASSERT_TRUE(hot_spot_stops(front));
    EXPECT_NEAR(*hot_spot_stops(front), 0.0, 1e-5);
}

// Howell's configuration factor of a rectangle 0.6 × 0.9 m at 1.2 m on its axis, 0.10527351: E = F / A for 1 lm.
TEST(FarField, IlluminanceOnTheAxisIsTheConfigurationFactors) {
    EXPECT_NEAR(axial_illuminance(emitter_alone(RectangleShape{0.6, 0.9}), 1.2), 0.10527351 / (0.6 * 0.9), 2e-4);
}

// The head lights the canopy's middle from nearest and most squarely, so the middle is brighter (common practice, no
// source).
TEST(FarField, AnUmbrellaIsBrightestInTheMiddle) {
    UmbrellaShape umbrella;
    umbrella.diameter_m = 1.05;
    umbrella.depth_m = 0.26;
    umbrella.head = {0.63, 70.0, 0.75};
    umbrella.head_diameter_m = 0.18;
    const auto hot_spot = hot_spot_stops(emitter_alone(umbrella));
    ASSERT_TRUE(hot_spot);
    EXPECT_GT(*hot_spot, 0.5);
}

}  // namespace
}  // namespace understudy
