// What a change of a scene leaves standing.
#include "rehearsal/scene_change.h"

#include <gtest/gtest.h>

namespace understudy {
namespace {

const char* const kScene = R"(
title = "Two lights"
[picture]
width = 320
[camera]
distance = 2
aperture = 4
[sitter]
head = "aspen"
[room]
ambient = 5
[[light]]
name = "key"
modifier = "octa-95"
angle = -45
distance = 1.2
meter = 5.6
[[light]]
name = "rim"
modifier = "strip-30x120"
angle = 150
distance = 1.5
meter = 4.0
[[panel]]
name = "under the chin"
angle = 0
distance = 0.6
)";

Value parsed(const std::string& text) {
    auto tree = parse_toml(text, "a scene");
    EXPECT_TRUE(tree);
    return std::move(*tree);
}

SceneChange changed(const std::string& before, const std::string& after) {
    std::string text = kScene;
    const std::size_t at = text.find(before);
    EXPECT_NE(at, std::string::npos) << before;
    text.replace(at, before.size(), after);
    return change_between(parsed(kScene), parsed(text));
}

using Names = std::vector<std::string>;

TEST(SceneChange, OfWordsAndPlacesIsNone) {
    EXPECT_EQ(changed("[picture]", "\n\n# a remark\n[picture]").reach, Reach::kNothing);
    EXPECT_EQ(changed("distance = 2\naperture = 4", "aperture = 4\ndistance = 2").reach, Reach::kNothing);
}

TEST(SceneChange, OfPowerColourAndExposureIsDeveloped) {
    EXPECT_EQ(changed("meter = 5.6", "meter = 8.0").reach, Reach::kDeveloping);
    EXPECT_EQ(changed("meter = 5.6", "energy = 200").reach, Reach::kDeveloping);
    EXPECT_EQ(changed("meter = 5.6", "meter = 5.6\ngel = \"full-warm\"").reach, Reach::kDeveloping);
    EXPECT_EQ(changed("[camera]", "[camera]\niso = 400").reach, Reach::kDeveloping);
    EXPECT_EQ(changed("width = 320", "width = 320\ntreatment = \"black-and-white\"").reach, Reach::kDeveloping);
    EXPECT_EQ(changed("ambient = 5", "ambient = 9").reach, Reach::kDeveloping);
}

TEST(SceneChange, OfALightIsItsOwn) {
    const SceneChange key = changed("angle = -45", "angle = -60");
    EXPECT_EQ(key.reach, Reach::kLights);
    EXPECT_EQ(key.lights, Names{"key"});
    EXPECT_TRUE(key.same_view);
    const SceneChange rim = changed("modifier = \"strip-30x120\"", "modifier = \"octa-60\"");
    EXPECT_EQ(rim.lights, Names{"rim"});
    const SceneChange both =
        changed("distance = 1.2\nmeter = 5.6\n[[light]]\nname = \"rim\"\nmodifier = \"strip-30x120\"\nangle = 150",
                "distance = 1.3\nmeter = 8.0\n[[light]]\nname = \"rim\"\nmodifier = \"strip-30x120\"\nangle = 160");
    EXPECT_EQ(both.reach, Reach::kLights);
    EXPECT_EQ(both.lights, (Names{"key", "rim"}));
}

TEST(SceneChange, OfTheStudioLeavesTheSitter) {
    EXPECT_EQ(changed("distance = 0.6", "distance = 0.7").reach, Reach::kStudio);
    EXPECT_EQ(changed("name = \"rim\"", "name = \"edge\"").reach, Reach::kStudio);
    EXPECT_EQ(changed("[room]", "[backdrop]\nsurface = \"black\"\n[room]").reach, Reach::kStudio);
    EXPECT_TRUE(changed("distance = 0.6", "distance = 0.7").same_view);
    // Another aperture sends other rays through the lens.
    const SceneChange aperture = changed("aperture = 4", "aperture = 8");
    EXPECT_EQ(aperture.reach, Reach::kStudio);
    EXPECT_FALSE(aperture.same_view);
}

TEST(SceneChange, OfSitterOrViewBeginsAnew) {
    EXPECT_EQ(changed("head = \"aspen\"", "head = \"birch\"").reach, Reach::kSitter);
    EXPECT_EQ(changed("head = \"aspen\"", "head = \"aspen\"\nturn = 10").reach, Reach::kSitter);
    EXPECT_EQ(changed("distance = 2\n", "distance = 1.5\n").reach, Reach::kSitter);
    // Hairs are as wide as the picture's pixels show them.
    EXPECT_EQ(changed("width = 320", "width = 640").reach, Reach::kSitter);
    EXPECT_EQ(changed("width = 320", "width = 320\nsamples = 9").reach, Reach::kStudio);
}

TEST(SceneChange, IsTheGreatestOfAll) {
    const SceneChange change = changed(
        "head = \"aspen\"\n[room]\nambient = 5\n[[light]]\nname = \"key\"\nmodifier = \"octa-95\"\nangle = -45",
        "head = \"birch\"\n[room]\nambient = 6\n[[light]]\nname = \"key\"\nmodifier = \"octa-95\"\nangle = -30");
    EXPECT_EQ(change.reach, Reach::kSitter);
    EXPECT_TRUE(change.lights.empty());
}

}  // namespace
}  // namespace understudy
