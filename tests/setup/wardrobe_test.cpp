// Clothes, glasses and hats as a scene file says them.
#include <gtest/gtest.h>

#include "scratch_library.h"

namespace understudy {
namespace {

const std::string kLight = "[[light]]\nmodifier = \"bulb\"\nmeter = 4\n";

SitterSettings sitter_of(const std::string& keys) {
    const ScratchLibrary scratch;
    const auto setup = scratch.parse("[sitter]\n" + keys + "\n" + kLight);
    EXPECT_TRUE(setup) << all_text(setup ? Problems{} : setup.problems());
    return setup ? setup->sitter : SitterSettings{};
}

TEST(Wardrobe, IsACrewNeckUnlessSaid) {
    const SitterSettings sitter = sitter_of("");
    EXPECT_EQ(sitter.clothes.outfit, Outfit::kCrewNeck);
    EXPECT_FALSE(sitter.clothes.fabric);
    EXPECT_FALSE(sitter.glasses);
    EXPECT_FALSE(sitter.hat);
    EXPECT_FALSE(sitter_of("glasses = \"none\"\nhat = \"none\"").glasses);
}

TEST(Wardrobe, TakesNames) {
    EXPECT_EQ(sitter_of("clothes = \"bare-shoulders\"").clothes.outfit, Outfit::kBareShoulders);
    EXPECT_EQ(sitter_of("clothes = \"high-neck\"").clothes.outfit, Outfit::kHighNeck);
    EXPECT_EQ(sitter_of("clothes = \"open-collar\"").clothes.outfit, Outfit::kOpenCollar);
    const SitterSettings sitter = sitter_of("clothes = \"jacket\"\nglasses = \"half-rim\"\nhat = \"brimmed\"");
    EXPECT_EQ(sitter.clothes.outfit, Outfit::kJacket);
    ASSERT_TRUE(sitter.glasses);
    EXPECT_EQ(sitter.glasses->frame, GlassesFrame::kHalfRim);
    EXPECT_EQ(sitter.glasses->glass, LensCoating::kCoated);
    EXPECT_DOUBLE_EQ(sitter.glasses->lean_deg, 9.0);
    EXPECT_DOUBLE_EQ(sitter.glasses->curvature_m, 0.110);
    ASSERT_TRUE(sitter.hat);
    EXPECT_DOUBLE_EQ(sitter.hat->brim_m, 0.06);
}

TEST(Wardrobe, TakesTables) {
    const SitterSettings sitter = sitter_of(
        "clothes = { outfit = \"jacket\", fabric = \"velvet\", colour = 0.05, shirt = { colour = [200, 210, 230] } }\n"
        "glasses = { frame = \"round\", colour = \"gold\", glass = \"plain\", lean = -3, curvature = \"90 mm\" }\n"
        "hat = { brim = \"8 cm\", tilt = 12, colour = \"navy\" }");
    EXPECT_EQ(sitter.clothes.fabric, Fabric::kVelvet);
    EXPECT_FLOAT_EQ(sitter.clothes.colour.at(550.0F), 0.05F);
    EXPECT_GT(sitter.clothes.shirt_colour.at(450.0F), sitter.clothes.shirt_colour.at(620.0F));
    ASSERT_TRUE(sitter.glasses);
    EXPECT_EQ(sitter.glasses->frame, GlassesFrame::kRound);
    EXPECT_TRUE(std::holds_alternative<Metal>(sitter.glasses->colour));
    EXPECT_EQ(sitter.glasses->glass, LensCoating::kPlain);
    EXPECT_DOUBLE_EQ(sitter.glasses->lean_deg, -3.0);
    EXPECT_DOUBLE_EQ(sitter.glasses->curvature_m, 0.090);
    ASSERT_TRUE(sitter.hat);
    EXPECT_DOUBLE_EQ(sitter.hat->brim_m, 0.08);
    EXPECT_DOUBLE_EQ(sitter.hat->tilt_deg, 12.0);
    EXPECT_GT(sitter.hat->colour.at(450.0F), sitter.hat->colour.at(620.0F));
}

struct Bad {
    std::string keys;  // from line 2 on
    std::string at;
    std::vector<std::string> words;
};

void PrintTo(const Bad& bad, std::ostream* stream) { *stream << bad.keys; }

class BadWardrobe : public testing::TestWithParam<Bad> {};

TEST_P(BadWardrobe, IsToldWithItsPlace) {
    const ScratchLibrary scratch;
    const auto setup = scratch.parse("[sitter]\n" + GetParam().keys + "\n" + kLight);
    ASSERT_FALSE(setup);
    EXPECT_EQ(setup.problems().size(), 1U) << all_text(setup.problems());
    const std::string text = setup.problems().front().text;
    EXPECT_EQ(text.find((scratch.folder() / "scene.toml").string() + ":" + GetParam().at + ": "), 0U) << text;
    EXPECT_NE(text.find("; expected "), std::string::npos) << text;
    for (const std::string& word : GetParam().words) {
        EXPECT_NE(text.find(word), std::string::npos) << text << "\nhas no " << word;
    }
}

INSTANTIATE_TEST_SUITE_P(
    Clothes, BadWardrobe,
    testing::Values(Bad{"clothes = \"jaket\"", "2:11", {"jaket", "did you mean \"jacket\"?"}},
                    Bad{"clothes = 3", "2:11", {"clothes", "whole number 3", "outfit"}},
                    Bad{"clothes = { outfit = \"tie\" }", "2:22", {"tie", "crew-neck"}},
                    Bad{"clothes = { outfit = 1 }", "2:22", {"outfit", "a string"}},
                    Bad{"clothes = { color = 0.2 }", "2:13", {"\"color\"", "did you mean \"colour\"?"}},
                    Bad{"clothes = { colour = \"silver\" }", "2:22", {"colour", "metal"}},
                    Bad{"clothes = { colour = 1.2 }", "2:22", {"colour", "1.2", "0 to 0.98"}},
                    Bad{"clothes = { colour = \"nvy\" }", "2:22", {"did you mean \"navy\"?"}},
                    Bad{"clothes = { fabric = \"silk\" }", "2:22", {"silk", "jersey"}},
                    Bad{"clothes = { shirt = \"white\" }", "2:13", {"shirt", "jacket"}},
                    Bad{"head = \"ball\"\nclothes = \"jacket\"", "3:1", {"clothes", "ball", "head of the library"}}));

INSTANTIATE_TEST_SUITE_P(
    Glasses, BadWardrobe,
    testing::Values(Bad{"glasses = \"rond\"", "2:11", {"rond", "did you mean \"round\"?"}},
                    Bad{"glasses = true", "2:11", {"glasses", "true", "frame"}},
                    Bad{"glasses = { frame = \"pilot\" }", "2:21", {"pilot", "half-rim"}},
                    Bad{"glasses = { glass = \"tinted\" }", "2:21", {"tinted", "plain", "coated"}},
                    Bad{"glasses = { lean = 26 }", "2:20", {"lean", "26", "-10 degrees to 25 degrees"}},
                    Bad{"glasses = { lean = \"9 m\" }", "2:20", {"lean"}},
                    Bad{"glasses = { curvature = \"4 cm\" }", "2:25", {"curvature", "0.04 m", "0.05 m to 1 m"}},
                    Bad{"glasses = { colour = \"plaid\" }", "2:22", {"plaid"}},
                    Bad{"glasses = { lens = \"plain\" }", "2:13", {"\"lens\"", "glass"}},
                    Bad{"head = \"none\"\nglasses = \"round\"", "3:1", {"glasses", "none"}},
                    Bad{"head = \"own.obj\"\nglasses = \"round\"", "3:1", {"glasses", "own.obj"}}));

INSTANTIATE_TEST_SUITE_P(
    Hat, BadWardrobe,
    testing::Values(Bad{"hat = \"cap\"", "2:7", {"cap", "brimmed"}}, Bad{"hat = 6", "2:7", {"hat", "brim"}},
                    Bad{"hat = { brim = \"30 cm\" }", "2:16", {"brim", "0.3 m", "0.01 m to 0.25 m"}},
                    Bad{"hat = { brim = \"6 kg\" }", "2:16", {"brim", "\"kg\""}},
                    Bad{"hat = { tilt = 31 }", "2:16", {"tilt", "31", "-20 degrees to 30 degrees"}},
                    Bad{"hat = { colour = \"gold\" }", "2:18", {"colour", "metal"}},
                    Bad{"hat = { crown = 3 }", "2:9", {"\"crown\"", "brim"}},
                    Bad{"head = \"ball\"\nhat = \"brimmed\"", "3:1", {"hat", "ball"}}));

}  // namespace
}  // namespace understudy
