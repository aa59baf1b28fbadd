#include "report/words.h"

#include <cmath>
#include <limits>

#include <gtest/gtest.h>

namespace understudy {
namespace {

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr double kInf = std::numeric_limits<double>::infinity();

// A clock's hour hand goes 30° an hour.
TEST(Words, ClockFromDegrees) {
    EXPECT_EQ(clock_time(300.0, 5), "10:00");
    EXPECT_EQ(clock_time(0.0, 5), "12:00");
    EXPECT_EQ(clock_time(90.0, 5), "3:00");
    EXPECT_EQ(clock_time(-90.0, 5), "9:00");
    EXPECT_EQ(clock_time(375.0, 5), "12:30");
    EXPECT_EQ(clock_time(359.9, 5), "12:00");
    EXPECT_EQ(clock_time(47.5, 5), "1:35");
    EXPECT_EQ(clock_time(47.5, 30), "1:30");
    EXPECT_EQ(clock_time(53.0, 30), "2:00");
    EXPECT_EQ(clock_time(kNan, 30), "none");
}

// A light at 45° to the side and 45° up, camera straight ahead, mirrors at atan2(sin 45° · cos 45°, sin 45°) = 35.26°:
// between one and half past one, not at two (law of reflection on a sphere).
TEST(Words, ClassicKeyIsNearOneOClock) {
    const double quarter = std::sqrt(0.5);
    const double clock_deg = std::atan2(quarter * quarter, quarter) * 180.0 / std::acos(-1.0);
    EXPECT_EQ(clock_time(clock_deg, 5), "1:10");
    EXPECT_EQ(clock_time(clock_deg, 30), "1:00");
}

TEST(Words, Stops) {
    EXPECT_EQ(signed_stops(0.34), "+0.3");
    EXPECT_EQ(signed_stops(-1.84), "-1.8");
    EXPECT_EQ(signed_stops(-0.04), "0.0");
    EXPECT_EQ(signed_stops(0.04), "0.0");
    EXPECT_EQ(signed_stops(-kInf), "no light");
    EXPECT_EQ(signed_stops(kInf), "none");
    EXPECT_EQ(signed_stops(kNan), "none");
}

TEST(Words, Numbers) {
    EXPECT_EQ(three_figures(1263.849), "1264");
    EXPECT_EQ(three_figures(41.234), "41.2");
    EXPECT_EQ(three_figures(0.012345), "0.0123");
    EXPECT_EQ(three_figures(0.0), "0");
    EXPECT_EQ(three_figures(kInf), "none");
    EXPECT_EQ(percent(0.754), "75 %");
    EXPECT_EQ(percent(kNan), "none");
    EXPECT_EQ(plain_number(-0.001, 1), "0.0");
}

TEST(Words, Shutter) {
    EXPECT_EQ(shutter_time(1.0 / 200.0), "1/200 s");
    EXPECT_EQ(shutter_time(0.5), "0.5 s");
    EXPECT_EQ(shutter_time(2.0), "2 s");
    EXPECT_EQ(shutter_time(kNan), "none");
}

TEST(Words, ChoicesOfTheMeter) {
    EXPECT_EQ(word(Receptor::kFlat), "flat");
    EXPECT_EQ(word(Receptor::kDome), "dome");
    EXPECT_EQ(word(Facing::kCamera), "camera");
    EXPECT_EQ(word(Facing::kKey), "key");
    EXPECT_EQ(word(Facing::kSurface), "surface");
    EXPECT_EQ(word(EyeVerdict::kDark), "dark");
    EXPECT_EQ(word(EyeVerdict::kDim), "dim");
    EXPECT_EQ(word(EyeVerdict::kLit), "lit");
}

}  // namespace
}  // namespace understudy
