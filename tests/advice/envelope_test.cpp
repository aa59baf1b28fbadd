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

// A step toward or away from a light near the lens's axis is told by how a disc's light goes with distance: on its axis
// as 1 / (d² + r²), by the configuration factor of a disc (Howell, A catalog of radiation heat transfer configuration
// factors, B-11). The light stands 15 degrees up at 0.9 m and is 0.6 m wide; over the steps the way to it turns by a
// few degrees, which a dome and the disc together see as less than 0.03 stop.
TEST(Envelope, StepsHoldAsLongAsTheLawOfTheDiscSays) {
    constexpr double kDistance = 0.9;
    constexpr double kRadius = 0.3;
    const auto envelope =
        find_envelope(setup_from(scene("angle = 0\nelevation = 15\ndistance = 0.9\n")), source_library());
    ASSERT_TRUE(envelope);
    const double up = radians(15.0);
    const Double3 light = kDistance * Double3(0.0, std::sin(up), std::cos(up));
    const auto stops_at = [&](double forward) {
        const auto law = [&](double d) { return 1.0 / (d * d + kRadius * kRadius); };
        return std::log2(law(glm::length(light - Double3(0.0, 0.0, forward))) / law(kDistance));
    };
    const EnvelopeRange& step = range_of(*envelope, Movement::kForward);
    for (const EnvelopeEnd* end : {&step.less, &step.more}) {
        ASSERT_TRUE(end->lapses);
        ASSERT_TRUE(end->lapse.stops) << "the exposure ends it, and neither pattern nor eyes";
        EXPECT_LE(std::abs(stops_at(end->holds_to)), kExposureHolds + 0.03);
        EXPECT_GE(std::abs(stops_at(*end->lapses)), kExposureHolds - 0.03);
        EXPECT_LE(std::abs(*end->lapses - end->holds_to), 0.0151) << "told to a centimetre";
    }
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
