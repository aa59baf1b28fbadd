// What the reader of photometric files refuses: each with its line and column, and what it should have been.

#include <chrono>
#include <fstream>

#include <gtest/gtest.h>

#include "scratch_library.h"
#include "setup/photometric_file.h"
#include "support/photometric_examples.h"

namespace understudy {
namespace {

struct Mistake {
    std::string what, with;  // in kQuadrants
    std::string at;
    std::string words;
};
void PrintTo(const Mistake& mistake, std::ostream* stream) { *stream << mistake.with; }
class Mistakes : public testing::TestWithParam<Mistake> {};

void expect_refused(const std::string& text, const std::string& at, const std::string& words) {
    const auto file = parse_photometric_file(text, "lamp.ies");
    ASSERT_FALSE(file) << text;
    ASSERT_EQ(file.problems().size(), 1U);
    const std::string& told = file.problems()[0].text;
    EXPECT_EQ(told.find("lamp.ies:" + at + ": "), 0U) << told << "\nnot at " << at;
    EXPECT_NE(told.find("; expected "), std::string::npos) << told;
    EXPECT_NE(told.find(words), std::string::npos) << told;
    EXPECT_EQ(file.problems()[0].blame, Blame::kWrongInput);
}

TEST_P(Mistakes, AreToldWithTheirPlace) {
    std::string text = kQuadrants;
    const std::size_t at = text.find(GetParam().what);
    ASSERT_NE(at, std::string::npos);
    text.replace(at, GetParam().what.size(), GetParam().with);
    expect_refused(text, GetParam().at, GetParam().words);
}

INSTANTIATE_TEST_SUITE_P(
    Lines, Mistakes,
    testing::Values(Mistake{"LM-63-2002", "LM-63-2031", "1:1", "the edition \"IESNA:LM-63-2031\" is not known"},
                    Mistake{"TILT=NONE", "TILT=", "7:1", "says nothing"},
                    Mistake{"TILT=NONE", "TILT=../x.tlt", "7:1", "a file in the same folder"},
                    Mistake{"TILT=NONE", "TILT=INCLUDE\n4\n", "8:1", "geometry is 4"},
                    Mistake{"TILT=NONE", "TILT=INCLUDE\n1\n2\n0 0\n1 1", "10:3", "tilt angle 2 is 0 after 0"},
                    Mistake{"TILT=NONE\n", "", "13:1", "no line with TILT"}));

INSTANTIATE_TEST_SUITE_P(Numbers, Mistakes,
                         testing::Values(Mistake{"1 -1 1.0", "0 -1 1.0", "8:1", "number of lamps is 0"},
                                         Mistake{"1 -1 1.0", "1 0 1.0", "8:3", "lumens per lamp is 0"},
                                         Mistake{"1 -1 1.0", "1 -0.5 1.0", "8:3", "lumens per lamp is -0.5"},
                                         Mistake{"1 -1 1.0", "1 -1 0", "8:6", "multiplier is 0"},
                                         Mistake{"1 -1 1.0", "1 -1 nan", "8:6", "\"nan\" is not a number"},
                                         Mistake{"1 -1 1.0", "1 -1 -inf", "8:6", "\"-inf\" is not a number"},
                                         Mistake{"1 -1 1.0", "1 -1 1e999", "8:6", "\"1e999\" is not a number"},
                                         Mistake{"1 -1 1.0", "1 -1 0x1p3", "8:6", "\"0x1p3\" is not a number"},
                                         Mistake{"1 -1 1.0", "1 -1 1.0cd", "8:6", "\"1.0cd\" is not a number"},
                                         Mistake{"1.0 3 3 1 2", "1.0 2.5 3 1 2", "8:10", "vertical angles is 2.5"},
                                         Mistake{"1.0 3 3 1 2", "1.0 1 3 1 2", "8:10", "vertical angles is 1"},
                                         Mistake{"1.0 3 3 1 2", "1.0 3 -3 1 2", "8:12", "horizontal angles is -3"},
                                         Mistake{"1.0 3 3 1 2", "1.0 3 3 4 2", "8:14", "type is 4"},
                                         Mistake{"1.0 3 3 1 2", "1.0 3 3 1 3", "8:16", "metres) is 3"},
                                         Mistake{"0.30 1.20", "0.30 5000", "8:23", "length is 5000"},
                                         Mistake{"1.0 1.0 100", "0 1.0 100", "9:1", "ballast factor is 0"},
                                         Mistake{"1.0 1.0 100", "1.0 0 100", "9:5", "0, out of range"},
                                         Mistake{"1.0 1.0 100", "1.0 1.0 -3", "9:9", "watts is -3"}));

INSTANTIATE_TEST_SUITE_P(AnglesAndCandela, Mistakes,
                         testing::Values(Mistake{"0 45 90\n0", "0 45 45\n0", "10:6", "vertical angle 3 is 45 after 45"},
                                         Mistake{"0 45 90\n6", "0 95 90\n6", "11:6",
                                                 "horizontal angle 3 is 90 after 95"},
                                         Mistake{"0 45 90\n0", "5 45 90\n0", "10:6", "first vertical angle is 5"},
                                         Mistake{"0 45 90\n0", "0 45 80\n0", "10:6", "last vertical angle is 80"},
                                         Mistake{"0 45 90\n6", "1 45 90\n6", "11:6", "first horizontal angle is 1"},
                                         Mistake{"0 45 90\n6", "0 45 100\n6", "11:6", "last horizontal angle is 100"},
                                         Mistake{"0 45 90\n6", "0 45 361\n6", "11:6", "361, out of range"},
                                         Mistake{"600 300 0", "600 -300 0", "13:5", "-300, out of range"},
                                         Mistake{"600 300 0", "600,,0", "13:5", "no value before this comma"},
                                         Mistake{"600 300 0", "600 3oo 0", "13:5", "\"3oo\" is not a number"},
                                         Mistake{"600 300 0", "600 1e20 0", "13:5", "1e20, out of range"},
                                         Mistake{"600 300 0", "600 300", "15:1", "the file ends too early"},
                                         Mistake{"600 300 0", "600 300 0 0", "14:9", "more numbers, from 0 on"},
                                         Mistake{"600 400 0\n600 300 0\n600 200 0", "0 0 0 0 0 0 0 0 0", "12:17",
                                                 "no direction has any light"},
                                         Mistake{"1.0 3 3 1 2", "1.0 4 3 1 2", "11:1", "vertical angle 4 is"}));

TEST(PhotometricErrors, SidewaysTypesHaveTheirOwnRanges) {
    expect_refused(photometric_text(2, 2, 2, "-80 90\n0 90\n1 1\n1 1"), "9:5", "first vertical angle is -80");
    expect_refused(photometric_text(2, 2, 2, "-90 80\n0 90\n1 1\n1 1"), "9:5", "last vertical angle is 80");
    expect_refused(photometric_text(2, 2, 3, "-90 90\n-45 90\n1 1\n1 1"), "10:5", "first horizontal angle is -45");
    expect_refused(photometric_text(2, 2, 3, "-90 90\n-90 45\n1 1\n1 1"), "10:5", "last horizontal angle is 45");
    expect_refused(photometric_text(2, 1, 1, "0 90\n90\n1 1"), "10:1", "first horizontal angle is 90");
}

TEST(PhotometricErrors, WhatIsNoPhotometricFile) {
    expect_refused("", "1:1", "no line with TILT");
    expect_refused("\n\n", "2:1", "no line with TILT");
    expect_refused("title = \"a scene\"\n[[light]]\nmodifier = \"bulb\"\n", "3:1", "no line with TILT");
    expect_refused(std::string("\x89PNG\r\n\x1a\n\0\0\0\rIHDR", 16), "1:1", "zero bytes");
    expect_refused("TILT=NONE", "1:10", "the file ends too early");
}

// Nothing is set aside for values that are only promised: this has to fail at once.
TEST(PhotometricErrors, HugeCountsAreNotBelieved) {
    const auto begin = std::chrono::steady_clock::now();
    expect_refused(photometric_text(100000, 100000, 1, "0 90"), "10:1", "vertical angle 3 of 100000");
    expect_refused(photometric_text(2147483647, 1, 1, "0 90"), "7:8", "vertical angles is 2147483647");
    EXPECT_LT(std::chrono::steady_clock::now() - begin, std::chrono::seconds(1));
}

TEST(PhotometricErrors, FilesThatCannotBeRead) {
    const ScratchLibrary scratch;
    const auto missing = read_photometric_file(scratch.folder() / "none.ies");
    ASSERT_FALSE(missing);
    EXPECT_NE(missing.problems()[0].text.find("no such file; expected a photometric file"), std::string::npos);
    const auto folder = read_photometric_file(scratch.folder());
    ASSERT_FALSE(folder);
    EXPECT_NE(folder.problems()[0].text.find("a folder"), std::string::npos);
    const auto endless = read_photometric_file("/dev/zero");
    ASSERT_FALSE(endless);
    EXPECT_NE(endless.problems()[0].text.find("larger than"), std::string::npos);
}

}  // namespace
}  // namespace understudy
