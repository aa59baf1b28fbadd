// Gels, illuminants and white balance in a scene file.
#include <gtest/gtest.h>

#include "scratch_library.h"

namespace understudy {
namespace {

const std::string kLight = "[[light]]\nmodifier = \"bulb\"\nmeter = 4\n";

Setup read(const std::string& text) {
    const ScratchLibrary scratch;
    const auto setup = scratch.parse(text);
    EXPECT_TRUE(setup) << all_text(setup.problems());
    return setup ? *setup : Setup{};
}

using Names = std::vector<std::string>;

TEST(GelInput, IsANameOrAList) {
    const auto gels = [](const std::string& line) { return read(kLight + line + "\n").lights.at(0).colour.gels; };
    EXPECT_EQ(gels(""), Names{});
    EXPECT_EQ(gels("gel = \"full-warm\""), Names{"full-warm"});
    EXPECT_EQ(gels("gel = [\"half-warm\", \"nd-0.3\"]"), (Names{"half-warm", "nd-0.3"}));
    EXPECT_EQ(gels("gel = []"), Names{});
    EXPECT_EQ(gels("gel = [\"warm-159\", \"cool-18\", \"nd-2-stops\", \"nd-1-stop\"]").size(), 4U);
    EXPECT_EQ(gels("gel = [\"red\", \"red\"]").size(), 2U);
}

TEST(GelInput, GoesWithAnyColourOfTheLamp) {
    EXPECT_EQ(read(kLight + "spectrum = \"LED-B3\"\ngel = \"blue\"\n").lights.at(0).colour.illuminant, "LED-B3");
    EXPECT_EQ(read(kLight + "spectrum = \"xenon-flash\"\n").lights.at(0).colour.illuminant, "xenon-flash");
    EXPECT_EQ(read(kLight + "spectrum = \"F2\"\n").lights.at(0).colour.illuminant, "F2");
}

TEST(RoomInput, HasATemperatureOrAnIlluminant) {
    EXPECT_EQ(read(kLight + "[room]\nambient = 40\nambient_spectrum = \"FL2\"\n").room.ambient_illuminant, "FL2");
    const RoomSettings warm = read(kLight + "[room]\nambient = 40\nambient_temperature = 2900\n").room;
    EXPECT_EQ(warm.ambient_illuminant, "");
    EXPECT_DOUBLE_EQ(warm.ambient_kelvin, 2900.0);
}

TEST(WhiteBalanceInput, MayBeAnIlluminant) {
    const WhiteBalance named = read("[picture]\nwhite_balance = \"FL11\"\n" + kLight).picture.white_balance;
    EXPECT_EQ(named.illuminant, "FL11");
    EXPECT_FALSE(named.as_lit);
    const WhiteBalance tungsten = read("[picture]\nwhite_balance = \"tungsten\"\n" + kLight).picture.white_balance;
    EXPECT_EQ(tungsten.illuminant, "");
    EXPECT_DOUBLE_EQ(tungsten.kelvin, 3200.0);
}

void expect_problem(const std::string& text, const std::string& at, const Names& words) {
    const ScratchLibrary scratch;
    const auto setup = scratch.parse(text);
    ASSERT_FALSE(setup) << text;
    EXPECT_EQ(setup.problems().size(), 1U) << all_text(setup.problems());
    const std::string& problem = setup.problems().front().text;
    EXPECT_EQ(problem.find((scratch.folder() / "scene.toml").string() + ":" + at + ": "), 0U) << problem;
    EXPECT_NE(problem.find("; expected "), std::string::npos) << problem;
    for (const std::string& word : words) EXPECT_NE(problem.find(word), std::string::npos) << problem << "\n" << word;
}

TEST(ColourInput, MistakesAreToldWithTheirPlace) {
    expect_problem(kLight + "gel = \"ful-warm\"\n", "4:7", {"ful-warm", "did you mean \"full-warm\"?", "nd-0.1"});
    expect_problem(kLight + "gel = \"\"\n", "4:7", {"unknown name \"\""});
    expect_problem(kLight + "gel = \"nd-9\"\n", "4:7", {"nd-9", "nd-0.1 to nd-4"});
    expect_problem(kLight + "gel = \"warm-900\"\n", "4:7", {"warm-900", "warm-1 to warm-300"});
    expect_problem(kLight + "gel = [\"red\", \"bleu\"]\n", "4:15", {"bleu", "did you mean \"blue\"?"});
    expect_problem(kLight + "gel = [\"red\", 3]\n", "4:15", {"whole number 3", "gels' names"});
    expect_problem(kLight + "gel = 3\n", "4:7", {"gel is the whole number 3", "a list"});
    expect_problem(kLight + "gel = [\"red\",\"red\",\"red\",\"red\",\"red\",\"red\",\"red\",\"red\",\"red\"]\n", "4:7",
                   {"a list of 9", "at most 8"});
    expect_problem(kLight + "gels = \"red\"\n", "4:1", {"unknown key \"gels\"", "did you mean \"gel\"?"});
    expect_problem(kLight + "[room]\nambient_spectrum = \"FL12\"\n", "5:20", {"FL12", "FL11"});
    expect_problem(kLight + "[room]\nambient_spectrum = \"A\"\nambient_temperature = 3000\n", "5:1",
                   {"both ambient_temperature and ambient_spectrum"});
    expect_problem("[picture]\nwhite_balance = \"LED-B9\"\n" + kLight, "2:17",
                   {"LED-B9", "did you mean \"LED-B1\"?", "LED-B1"});
}

}  // namespace
}  // namespace understudy
