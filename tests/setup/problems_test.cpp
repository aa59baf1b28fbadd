// How mistakes are told: all at once, in order, one short line each, and none that follows from another.
#include <algorithm>

#include <gtest/gtest.h>

#include "scratch_library.h"

namespace understudy {
namespace {

const std::string kLight = "[[light]]\nmodifier = \"bulb\"\nmeter = 4\n";

TEST(Problems, AllProblemsOfAFileAreToldInOneGoInTheirOrder) {
    const ScratchLibrary scratch;
    const auto setup =
        scratch.parse("zebra = 1\n[picture]\nwidth = 1\nsamples = 0\n[sitter]\ngaze = \"x\"\n[[light]]\n");
    ASSERT_FALSE(setup);
    std::vector<std::string> places;
    for (const Problem& problem : setup.problems()) {
        const std::string after = problem.text.substr(problem.text.find("scene.toml:") + 11);
        places.push_back(after.substr(0, after.find(": ")));
    }
    EXPECT_EQ(places, (std::vector<std::string>{"1:1", "3:9", "4:11", "6:8", "7:1", "7:1"}));
}

TEST(Problems, FifteenLightsAreEnough) {
    const ScratchLibrary scratch;
    std::string text = kLight;
    for (int i = 0; i < 14; ++i) {
        text += "[[light]]\nmodifier = \"bulb\"\n";
    }
    EXPECT_TRUE(scratch.parse(text));
    const auto setup = scratch.parse(text + "[[light]]\nmodifier = \"bulb\"\n");
    ASSERT_FALSE(setup);
    EXPECT_EQ(setup.problems().size(), 1U);
    EXPECT_NE(setup.problems().front().text.find(":32:1: there are more lights"), std::string::npos);
}

TEST(Problems, SixtyFourPanelsAreEnough) {
    const ScratchLibrary scratch;
    std::string text = kLight;
    for (int i = 0; i < 64; ++i) {
        text += "[[panel]]\n";
    }
    EXPECT_TRUE(scratch.parse(text));
    const auto setup = scratch.parse(text + "[[panel]]\n");
    ASSERT_FALSE(setup);
    EXPECT_NE(setup.problems().front().text.find(":68:1: there are too many panels"), std::string::npos);
}

// What a file says must not move the cursor of the terminal that shows the message.
TEST(Problems, MessagesAreOneShortLine) {
    const ScratchLibrary scratch;
    for (const std::string& text :
         {kLight + "name = \"\\u001b[2J\\n\"\n[[light]]\nmodifier = \"\\u001b[2J\\n\"\n",
          "[picture]\ntreatment = \"\"\"" + std::string(500, '\n') + "\"\"\"\n" + kLight,
          "[camera]\ndistance = \"1 \\u001b\"\n" + kLight, "\"a\\nb\" = 1\n" + kLight, "title = n\n" + kLight}) {
        const auto setup = scratch.parse(text);
        ASSERT_FALSE(setup);
        for (const Problem& problem : setup.problems()) {
            EXPECT_EQ(problem.text.find_first_of("\n\x1b"), std::string::npos) << problem.text;
            EXPECT_LT(problem.text.size(), 400U);
        }
    }
}

// A wrong eye height is one mistake: nothing is measured against it.
TEST(Problems, AMistakeBringsNoFurtherOnesWithIt) {
    const ScratchLibrary scratch;
    EXPECT_EQ(scratch.parse("[sitter]\neye_height = 9\n" + kLight + "height = 9\n").problems().size(), 1U);
    EXPECT_EQ(scratch.parse(kLight + "distance = -1\nheight = 9").problems().size(), 1U);
}

TEST(Problems, FilesThatCannotBeReadAreTheCallersToMend) {
    const ScratchLibrary scratch;
    for (const char* name : {"heads", "missing.toml", "own.obj/scene.toml"}) {
        const auto setup = read_setup(scratch.folder() / name, scratch.library());
        ASSERT_FALSE(setup) << name;
        EXPECT_EQ(setup.problems().front().blame, Blame::kWrongInput);
        EXPECT_NE(setup.problems().front().text.find(name), std::string::npos);
    }
    EXPECT_FALSE(read_setup("", scratch.library()));
    EXPECT_FALSE(read_setup("/dev/zero", scratch.library()));
    if (geteuid() != 0) {  // root may read anything
        const std::filesystem::path file = scratch.folder() / "secret.toml";
        std::ofstream(file) << kLight;
        std::filesystem::permissions(file, std::filesystem::perms::none);
        EXPECT_FALSE(read_setup(file, scratch.library()));
    }
}

TEST(Problems, AMissingLibraryIsSaid) {
    const ScratchLibrary scratch;
    const auto setup = parse_setup(kLight, "scene.toml", {"/nowhere/kit", "/nowhere/heads", "", ""});
    ASSERT_FALSE(setup);
    const std::string text = all_text(setup.problems());
    EXPECT_NE(text.find("scene.toml:1:1: [sitter] head is the unknown name \"aspen\""), std::string::npos) << text;
    EXPECT_NE(text.find("scene.toml:2:12: [[light]] modifier"), std::string::npos) << text;
    EXPECT_NE(text.find("/nowhere/kit"), std::string::npos) << text;
}

}  // namespace
}  // namespace understudy
