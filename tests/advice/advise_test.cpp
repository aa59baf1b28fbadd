// Advice against the meter: what is said to mend dark eyes does, in a setup that is built as the instruction says.
#include <cmath>

#include <gtest/gtest.h>

#include "advice/advise.h"
#include "meter/meter.h"
#include "support/studio_from.h"

namespace understudy {
namespace {

std::string scene(const std::string& light, const std::string& sitter = "") {
    return "[sitter]\nhead = \"birch\"\nhair = \"none\"\n" + sitter +
           "[[light]]\nname = \"key\"\nmodifier = { shape = \"disc\", diameter = 0.6 }\nmeter = 5.6\n" + light;
}

MeterReport metered(const std::string& toml) {
    const Studio studio = studio_from(toml);
    const Stage stage(studio, Stage::With::kSitter);
    const Stage nobody(studio, Stage::With::kNobody);
    return read_meter(studio, stage, nobody, value_of(set_powers(studio, nobody)));
}

bool alive(const MeterReport& report, const std::string& name) {
    double shown = 0.0;
    for (const Catchlight& image : *report.catchlights) {
        if (image.eye == name) shown = std::max(shown, image.visible);
    }
    for (const EyeReading& eye : *report.eyes) {
        if (eye.eye == name) return eye.stops_from_cheek >= -kFarthestUnderCheek - 0.05 && shown >= kShowsEnough - 0.02;
    }
    return false;
}

const Fix* fix_of(const Advice& advice, FixKind kind) {
    for (const Fix& fix : advice.fixes) {
        if (fix.kind == kind) return &fix;
    }
    return nullptr;
}

// 65 degrees up is past any brow (checks of the trade put the lid's own limit at 53 to 70): the eyes are lost, and
// the light brought down its arc by what is said brings them back in a full run of the meter.
TEST(Advise, LoweringTheKeyAsToldLightsBothEyes) {
    const auto advice = advise(setup_from(scene("angle = 0\nelevation = 65\ndistance = 1.5\n")), source_library());
    ASSERT_TRUE(advice);
    EXPECT_FALSE(advice->now.eyes.both_alive());
    for (const Fix& fix : advice->fixes) EXPECT_TRUE(fix.look.eyes.both_alive()) << static_cast<int>(fix.kind);
    for (std::size_t i = 1; i < advice->fixes.size(); ++i) {
        EXPECT_LT(static_cast<int>(advice->fixes[i - 1].kind), static_cast<int>(advice->fixes[i].kind))
            << "cheapest first";
    }
    const Fix* arc = fix_of(*advice, FixKind::kArc);
    ASSERT_NE(arc, nullptr);
    const double up = degrees(std::asin((arc->after - kSeatedEyes) / 1.5));
    const MeterReport after = metered(scene("angle = 0\nelevation = " + std::to_string(up) + "\ndistance = 1.5\n"));
    EXPECT_TRUE(alive(after, "camera-left"));
    EXPECT_TRUE(alive(after, "camera-right"));
    // The cut-off is a cliff: the same light a hand higher loses them.
    const MeterReport higher =
        metered(scene("angle = 0\nelevation = " + std::to_string(up + 6.0) + "\ndistance = 1.5\n"));
    EXPECT_FALSE(alive(higher, "camera-left") && alive(higher, "camera-right"));
}

TEST(Advise, HasNothingToMendWhereBothEyesAreAlive) {
    const auto advice = advise(setup_from(scene("angle = 25\nelevation = 20\ndistance = 1.5\n")), source_library());
    ASSERT_TRUE(advice);
    EXPECT_TRUE(advice->now.eyes.both_alive());
    EXPECT_TRUE(advice->fixes.empty());
    ASSERT_EQ(advice->heights.size(), 3U);
    for (const CutOff& cut : advice->heights[0].above_m) EXPECT_TRUE(cut.ever_alive);
}

TEST(Advise, IsAboutEyes) {
    const auto advice =
        advise(setup_from("[sitter]\nhead = \"ball\"\n[[light]]\nname = \"key\"\nmodifier = \"bulb\"\nmeter = 4\n"),
               source_library());
    ASSERT_FALSE(advice);
    EXPECT_NE(advice.problems().front().text.find("this sitter has none"), std::string::npos);
}

}  // namespace
}  // namespace understudy
