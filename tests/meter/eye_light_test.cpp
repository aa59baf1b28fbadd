// What each eye sees of each light, and the two faults that are told apart.
#include <cmath>

#include "meter/eyes.h"
#include "metered.h"

namespace understudy {
namespace {

std::string head(const std::string& sitter, const std::string& light) {
    return "[sitter]\nhead = \"aspen\"\nhair = \"none\"\n" + sitter + "[[light]]\nname = \"key\"\nmeter = 4\n" + light;
}

// A small light straight before the face: nothing of the face is in the way but lashes; both eyes see nearly all of it
// and get nearly what the cheeks get.
TEST(EyeLights, AFrontalLightIsSeenByBothEyes) {
    const MeterReport report =
        metered(head("", "modifier = { shape = \"disc\", diameter = 0.3 }\nangle = 15\nelevation = 0\ndistance = 2\n"));
    for (const EyeReading& eye : *report.eyes) {
        ASSERT_EQ(eye.lights.size(), 1U);
        EXPECT_GT(eye.lights[0].sight.share, 0.85) << eye.eye;
        EXPECT_EQ(eye.lights[0].fault, EyeFault::kNone);
        double all = eye.lights[0].sight.share;
        for (const Taken& taken : eye.lights[0].sight.taken) all += taken.share;
        EXPECT_NEAR(all, 1.0, 1e-6);
    }
}

// From behind, no light reaches either eye; the head itself is in the way.
TEST(EyeLights, ALightFromBehindReachesNoEye) {
    const MeterReport report = metered(
        head("", "modifier = { shape = \"disc\", diameter = 0.3 }\nangle = 180\nelevation = 20\ndistance = 1.5\n"));
    for (const EyeReading& eye : *report.eyes) {
        EXPECT_EQ(eye.lights[0].fault, EyeFault::kNoLight) << eye.eye;
        EXPECT_LT(eye.lights[0].sight.share, 0.01);
    }
}

// The eyes turned down away from a light that still reaches them: its mirror image leaves the cornea, upward. By the
// mirror's law it lies 7.8 sin(angle / 2) mm out in half the direction between light and lens, seen from the gaze.
TEST(EyeLights, LightWithoutReflectionIsTheOtherFault) {
    const MeterReport report =
        metered(head("gaze = [0, -30]\n",
                     "modifier = { shape = \"disc\", diameter = 0.2 }\nangle = 0\nelevation = 35\n"
                     "distance = 1.5\n"));
    for (const EyeReading& eye : *report.eyes) {
        EXPECT_GT(eye.lights[0].sight.share, kLeastSeen) << eye.eye;
        EXPECT_EQ(eye.lights[0].fault, EyeFault::kNoReflection) << eye.eye;
    }
}

// A mirror image is brighter than the iris under it: of a light of even radiance L over E = L·A/d² on the iris, the
// cornea mirrors 2.5 % (n = 1.376), the iris shows about ρ E / π. For a disc of 0.3 m at 2 m A/d² = 0.0177 sr, so with
// ρ between 0.03 and 0.3 the image is 2.5 % · π / (0.0177 ρ) = 15 to 150 times, 3.9 to 7.2 stops, over the iris.
TEST(EyeLights, CatchlightIsStopsOverTheIris) {
    const MeterReport report =
        metered(head("", "modifier = { shape = \"disc\", diameter = 0.3 }\nangle = 15\nelevation = 0\ndistance = 2\n"));
    for (const Catchlight& image : *report.catchlights) {
        EXPECT_GT(image.stops_over_iris, 3.9);
        EXPECT_LT(image.stops_over_iris, 7.2 + 1.0) << "what lashes take of the iris's light comes on top";
    }
}

}  // namespace
}  // namespace understudy
