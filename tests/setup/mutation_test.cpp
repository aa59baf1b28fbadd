#include <algorithm>
#include <random>
#include <string>

#include <gtest/gtest.h>

#include "scratch_library.h"

namespace understudy {
namespace {

// A scene that uses most keys, so that a mutation has something to hit.
const std::string kScene = R"(title = "x"
[picture]
width = 640
white_balance = "as-lit"
[camera]
sensor = [36.0, 24.0]
shutter = "1/200"
aim = [0, 1.2, 0]
[sitter]
head = "ball"
gaze = [5, -3]
[[light]]
modifier = { shape = "ring", diameter = "0.5 m", inner = "10 cm" }
elevation = 30
distance = "4 ft 3 in"
meter = 4.0
gel = ["half-warm", "nd-0.3"]
[[light]]
modifier = "octa-120"
position = [1, 2, 1]
from_key = -1.5
[[light]]
modifier = "bulb"
flash = "mine"
dial = "1/8 + 0.3"
[flash.mine]
energy = 400
lowest = "1/128"
calibration = { modifier = "bulb", dial = "1/2", distance = 1, reads = "8 + 3/10" }
[[panel]]
surface = 0.5
size = ["1 m", 1.5]
[backdrop]
surface = "none"
[room]
size = [4.0, 6.0, 2.7]
ambient_spectrum = "FL2"
)";

std::string mutated(std::mt19937& random) {
    using namespace std::string_literals;
    static const std::string pieces = "0123456789.-+\"'[]{}=,#\n\t eEmx_:\\\xff\x00\xc3\xa9nai"s;
    std::string text = kScene;
    const std::size_t edits = 1 + random() % 3;
    for (std::size_t i = 0; i < edits && !text.empty(); ++i) {
        const std::size_t where = random() % text.size();
        const std::size_t length = random() % std::min<std::size_t>(12, text.size() - where + 1);
        switch (random() % 4) {
            case 0:
                text[where] = pieces[random() % pieces.size()];
                break;
            case 1:
                text.erase(where, length);
                break;
            case 2: {
                const std::string copy = text.substr(where, length);
                text.insert(random() % text.size(), copy);
                break;
            }
            default:
                text.insert(where, 1, pieces[random() % pieces.size()]);
        }
    }
    return text;
}

TEST(Mutations, AlwaysGiveASetupOrProblemsWithAPlace) {
    const ScratchLibrary scratch;
    ASSERT_TRUE(scratch.parse(kScene)) << all_text(scratch.parse(kScene).problems());
    std::mt19937 random(20241);
    int accepted = 0;
    int refused = 0;
    for (int i = 0; i < 2000; ++i) {
        const std::string text = mutated(random);
        const auto setup = scratch.parse(text);
        if (setup) {
            ++accepted;
            EXPECT_FALSE(setup->lights.empty());
            continue;
        }
        ++refused;
        for (const Problem& problem : setup.problems()) {
            EXPECT_NE(problem.text.find(".toml:"), std::string::npos) << problem.text;
            EXPECT_NE(problem.text.find("; expected "), std::string::npos) << problem.text;
            EXPECT_TRUE(std::none_of(problem.text.begin(), problem.text.end(), [](unsigned char c) {
                return c < 0x20;
            })) << problem.text;
            EXPECT_EQ(problem.blame, Blame::kWrongInput);
        }
    }
    // Both outcomes have to be common, or the mutations test nothing.
    EXPECT_GT(accepted, 50);
    EXPECT_GT(refused, 1000);
}

// Nesting that would use up a recursive reader's stack.
TEST(Mutations, DeepNestingIsRefused) {
    const ScratchLibrary scratch;
    std::string dots = "a";
    for (int i = 0; i < 2000; ++i) {
        dots += ".a";
    }
    EXPECT_FALSE(scratch.parse("[" + dots + "]\n"));
    EXPECT_FALSE(scratch.parse(dots + " = 1\n"));
    EXPECT_FALSE(scratch.parse(dots + dots + dots + " = 1\n"));
    EXPECT_FALSE(scratch.parse("a = " + std::string(3000, '[')));
    std::string nested;
    for (int i = 0; i < 200; ++i) {
        nested += (i == 0 ? "x = [{" : "[{") + dots.substr(0, 1000) + " =\n";
    }
    EXPECT_FALSE(scratch.parse(nested));
    EXPECT_FALSE(scratch.parse(std::string(300000, '\n')));
}

}  // namespace
}  // namespace understudy
