// A head's own file: who it is, and its mistakes told with their places.
#include "setup/head_file.h"

#include <fstream>

#include <gtest/gtest.h>

#include "scratch_library.h"

namespace understudy {
namespace {

const std::string kFace = "[face]\nage = 30\nsex = \"woman\"\nancestry = \"asian\"\n";

Expected<HeadFile> read(const std::string& text) {
    const ScratchLibrary scratch;
    const auto path = scratch.folder() / "somebody.toml";
    std::ofstream(path) << text;
    return read_head_file(path);
}

// The only problem's "line:column: words".
std::string only_problem(const std::string& text) {
    const auto head = read(text);
    if (head) return "";
    EXPECT_EQ(head.problems().size(), 1U) << all_text(head.problems());
    const std::string& told = head.problems().front().text;
    return told.substr(told.find("somebody.toml:") + 14);
}

void expect_told(const std::string& text, const std::string& at, const std::string& word) {
    const std::string told = only_problem(text);
    EXPECT_EQ(told.find(at + ": "), 0U) << text << told;
    EXPECT_NE(told.find(word), std::string::npos) << told;
    EXPECT_NE(told.find("expected "), std::string::npos) << told;
}

TEST(HeadFile, SaysWhoItIs) {
    const auto head = read("sitter = \"somebody\"\nmelanin = 0.1\nblood = 0.03\n" + kFace +
                           "eye_set = -0.5\n[shape]\n\"nose/nose-hump-morehump\" = 1.5\n");
    ASSERT_TRUE(head) << all_text(head.problems());
    EXPECT_EQ(head->sitter, "somebody");
    EXPECT_EQ(head->melanin, 0.1);
    EXPECT_EQ(head->blood, 0.03);
    EXPECT_EQ(head->face.age_years, 30.0);
    EXPECT_EQ(head->face.sex, 0.0);
    EXPECT_EQ(head->face.ancestry->asian, 1.0);
    EXPECT_EQ(head->face.of(FaceFeature::kEyeSet), -0.5);
    EXPECT_FALSE(head->face.of(FaceFeature::kJaw));
    EXPECT_EQ(head->shapes.at("nose/nose-hump-morehump"), 1.5);
}

TEST(HeadFile, SceneGoesOverTheHeadKeyByKey) {
    FaceSettings own;
    own.age_years = 30.0;
    own.of(FaceFeature::kJaw) = 0.5;
    FaceSettings asked;
    asked.age_years = 60.0;
    asked.of(FaceFeature::kLips) = -0.5;
    const FaceSettings face = face_over(asked, own);
    EXPECT_EQ(face.age_years, 60.0);
    EXPECT_EQ(face.of(FaceFeature::kJaw), 0.5);
    EXPECT_EQ(face.of(FaceFeature::kLips), -0.5);
}

TEST(HeadFile, MistakesAreToldWithTheirPlace) {
    expect_told("melamin = 0.1\n" + kFace, "1:1", "melanin");
    expect_told("blood = 0.02\nmelanin = 0.9\n" + kFace, "2:11", "0.9");
    expect_told("melanin = \"much\"\n" + kFace, "1:11", "melanin");
    expect_told("lids = 1.31\n" + kFace, "1:8", "0 to 1.3");
    expect_told("blood = 0.02\niris = \"violet\"\n" + kFace, "2:8", "hazel");
    expect_told("iris = 1\n" + kFace, "1:8", "iris");
    expect_told(kFace + "[shape]\n\"nose/nose-hump-morehump\" = 9\n", "6:29", "9");
    expect_told("[face]\nsex = 0.5\nancestry = \"asian\"\n", "1:1", "no age");
    expect_told("[face]\nage = 30\nancestry = \"asian\"\n", "1:1", "no sex");
    expect_told("[face]\nage = 30\nsex = 1\n", "1:1", "no ancestry");
    expect_told("[face]\nage = 3\nsex = 1\nancestry = \"asian\"\n", "2:7", "16");
    expect_told("[face]\nage = 30\nsex = \"lady\"\nancestry = \"asian\"\n", "3:7", "woman");
    expect_told("[face]\nage = 30\nsex = 1\nancestry = \"asiam\"\n", "4:12", "asian");
    expect_told("[face]\nage = 30\nsex = 1\nancestry = { asian = 0.5, african = 0.4 }\n", "4:12", "0.9");
    EXPECT_NE(only_problem("melanin = \n" + kFace).find("1:"), std::string::npos);
}

}  // namespace
}  // namespace understudy
