// How far the sitter may move: against geometry, and against the meter beyond the limits that are told.
#include <cmath>

#include <gtest/gtest.h>

#include "advice/envelope.h"
#include "support/studio_from.h"

namespace understudy {
namespace {

std::string scene(const std::string& light) {
    return "[sitter]\nhead = \"birch\"\nhair = \"none\"\n[[light]]\nname = \"key\"\n"
           "modifier = { shape = \"disc\", diameter = 0.6 }\nmeter = 5.6\n" +
           light;
}

const EnvelopeRange& range_of(const Envelope& envelope, Movement movement) {
    for (const EnvelopeRange& range : envelope.ranges) {
        if (range.movement == movement) return range;
    }
    return envelope.ranges.front();
}

class EnvelopeOfLoop : public testing::Test {
  protected:
    static void SetUpTestSuite() {
        const auto found =
            find_envelope(setup_from(scene("angle = 25\nelevation = 25\ndistance = 1.2\n")), source_library());
        ASSERT_TRUE(found);
        envelope_ = *found;
    }
    static inline Envelope envelope_;
};

// A step toward or away from a light near the lens's axis is told by the inverse square of the distance: a third of a
// stop is a factor of 2^(1/6) = 1.122 in distance. The light stands 25 degrees up and 25 aside, at 1.2 m, and is 0.6 m
// wide, so that the law is the configuration factor of a disc (Howell, A catalog of radiation heat transfer
// configuration factors, B-11): on its axis the light goes as 1 / (d² + r²). What the dome sees of the light's angle
// changes by less than a hundredth of a stop over the steps.
TEST_F(EnvelopeOfLoop, StepsHoldAsLongAsTheLawOfTheDiscSays) {
    constexpr double kDistance = 1.2;
    constexpr double kRadius = 0.3;
    const double up = radians(25.0);
    const double around = radians(25.0);
    const Double3 light =
        kDistance * Double3(std::cos(up) * std::sin(around), std::sin(up), std::cos(up) * std::cos(around));
    const auto stops_at = [&](double forward) {
        const double away = glm::length(light - Double3(0.0, 0.0, forward));
        const auto law = [&](double d) { return 1.0 / (d * d + kRadius * kRadius); };
        return std::log2(law(away) / law(kDistance));
    };
    const EnvelopeRange& step = range_of(envelope_, Movement::kForward);
    ASSERT_TRUE(step.less.lapses);
    ASSERT_TRUE(step.less.lapse.stops) << "back: the exposure ends it";
    EXPECT_GE(stops_at(step.less.holds_to), -kExposureHolds - 0.03);
    EXPECT_LE(stops_at(*step.less.lapses), -kExposureHolds + 0.03);
    ASSERT_TRUE(step.more.lapses);
    EXPECT_LE(stops_at(step.more.holds_to), kExposureHolds + 0.03);
}

// Eyes that hold keep their catchlight, an arc of 7.8 mm of cornea: turned away from the light far enough, any eye
// loses it (common practice, no source), and turned toward the light the face goes flat before the eyes are lost.
TEST_F(EnvelopeOfLoop, TurningAwayEndsItAndEveryLimitIsTold) {
    EXPECT_TRUE(envelope_.now.eyes.both_alive());
    const EnvelopeRange& turn = range_of(envelope_, Movement::kTurn);
    ASSERT_TRUE(turn.less.lapses) << "away from a light at camera right";
    EXPECT_LT(turn.less.holds_to, 0.0 + 1e-9);
    EXPECT_GT(turn.less.holds_to, -60.0);
    for (const EnvelopeRange& range : envelope_.ranges) {
        for (const EnvelopeEnd* end : {&range.less, &range.more}) {
            if (!end->lapses) continue;
            EXPECT_TRUE(end->lapse.any());
            EXPECT_GT(std::abs(*end->lapses), std::abs(end->holds_to));
            EXPECT_GE(std::abs(end->beyond), std::abs(*end->lapses) - 1e-9);
        }
    }
}

// The eyes alone: the mirror image goes 4.3 mm · sin φ across the pupil for a gaze φ (by the geometry of a corneal
// sphere whose centre lies 4.3 mm before the eyeball's), and the face stays as it is: neither pattern nor exposure can
// end it.
TEST_F(EnvelopeOfLoop, TheGazeAloneChangesNeitherPatternNorExposure) {
    for (const Movement movement : {Movement::kGazeAcross, Movement::kGazeUp}) {
        const EnvelopeRange& gaze = range_of(envelope_, movement);
        for (const EnvelopeEnd* end : {&gaze.less, &gaze.more}) {
            EXPECT_FALSE(end->lapse.pattern);
            EXPECT_FALSE(end->lapse.stops);
        }
    }
}

TEST(Envelope, DoesNotCountAnEyeThatIsLostAsSet) {
    const auto envelope =
        find_envelope(setup_from(scene("angle = 0\nelevation = 75\ndistance = 1.2\n")), source_library());
    ASSERT_TRUE(envelope);
    ASSERT_FALSE(envelope->now.eyes.eyes[0].alive());
    for (const EnvelopeRange& range : envelope->ranges) {
        EXPECT_FALSE(range.less.lapse.eye_lost[0]);
        EXPECT_FALSE(range.more.lapse.eye_lost[0]);
    }
}

}  // namespace
}  // namespace understudy
