// The sitter's pose, face and expression as the scene file says them.
#include <gtest/gtest.h>

#include "scratch_library.h"

namespace understudy {
namespace {

const std::string kLight = "\n[[light]]\nmodifier = \"bulb\"\nmeter = 4\n";

SitterSettings sitter(const std::string& text) {
    const ScratchLibrary scratch;
    const auto setup = scratch.parse("[sitter]\n" + text + kLight);
    if (setup) return setup->sitter;
    ADD_FAILURE() << all_text(setup.problems());
    return {};
}

// "line:column" of the only problem, and what it has to say.
void expect_told(const std::string& text, const std::string& at, const std::string& word) {
    const ScratchLibrary scratch;
    const auto setup = scratch.parse("[sitter]\n" + text + kLight);
    ASSERT_FALSE(setup) << text;
    const std::string all = all_text(setup.problems());
    EXPECT_EQ(setup.problems().size(), 1U) << all;
    EXPECT_NE(all.find("scene.toml:" + at + ": "), std::string::npos) << all;
    EXPECT_NE(all.find(word), std::string::npos) << all;
    EXPECT_NE(all.find("; expected "), std::string::npos) << all;
}

TEST(SitterInput, Pose) {
    const auto posed = sitter("body = 30\nturn = -10\nshoulders = 5\nstep = [\"-10 cm\", 0.05]");
    EXPECT_EQ(posed.body_deg, 30.0);
    EXPECT_EQ(posed.turn_deg, -10.0);
    EXPECT_EQ(posed.shoulders_deg, 5.0);
    EXPECT_EQ(posed.step_m, Double3(-0.1, 0.0, 0.05));
}

TEST(SitterInput, PostureSetsTheEyesUnlessTheirHeightIsGiven) {
    EXPECT_EQ(sitter("").eye_height_m, kSeatedEyes);
    EXPECT_EQ(sitter("posture = \"standing\"").eye_height_m, kStandingEyes);
    EXPECT_EQ(sitter("posture = \"standing\"\neye_height = 1.7").eye_height_m, 1.7);
}

TEST(SitterInput, FaceAndExpression) {
    const auto changed = sitter("face = { age = 60, eye_set = -1 }\nexpression = { smile = 0.5 }");
    EXPECT_EQ(changed.face.age_years, 60.0);
    EXPECT_EQ(changed.face.of(FaceFeature::kEyeSet), -1.0);
    EXPECT_FALSE(changed.face.sex);
    EXPECT_EQ(changed.expression.smile, 0.5);
    EXPECT_EQ(changed.expression.squint, 0.0);
}

TEST(SitterInput, MistakesAreToldWithTheirPlace) {
    expect_told("body = 100", "2:8", "100 degrees against the body");
    expect_told("turn = 60\nbody = -60", "2:8", "120 degrees");
    expect_told("shoulders = 40", "2:13", "20");
    expect_told("step = 0.1", "2:8", "a list of 2");
    expect_told("step = [0.1, 3]", "2:14", "out of range");
    expect_told("posture = \"sitting\"", "2:11", "seated");
    expect_told("face = 3", "2:8", "table");
    expect_told("face = { brow = 0.1 }", "2:10", "brow_depth");
    expect_told("face = { jaw = 2 }", "2:16", "jaw is 2");
    expect_told("face = { jaw = nan }", "2:16", "jaw");
    expect_told("expression = { smile = -1 }", "2:24", "smile");
    expect_told("expression = { grin = 1 }", "2:16", "smile");
    expect_told("head = \"ball\"\nface = { jaw = 0.2 }", "3:1", "ball");
    expect_told("head = \"own.obj\"\nbody = 20", "3:1", "own.obj");
    expect_told("head = \"none\"\nexpression = { smile = 1 }", "3:1", "none");
}

}  // namespace
}  // namespace understudy
