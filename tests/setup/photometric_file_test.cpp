// What the reader of photometric files accepts, and how it says so. Sources: documentation and text of LM-63-1991,
// -1995 and -2002 as their users quote it; "met in files" are quirks reported by other programs' users, or from memory.

#include "setup/photometric_file.h"

#include <fstream>

#include <gtest/gtest.h>

#include "scratch_library.h"
#include "support/photometric_examples.h"

namespace understudy {
namespace {

PhotometricFile read(const std::string& text) {
    const auto file = parse_photometric_file(text, "lamp.ies");
    if (!file) {
        ADD_FAILURE() << all_text(file.problems());
        return {};
    }
    return *file;
}

std::string replaced(std::string text, const std::string& what, const std::string& with) {
    const std::size_t at = text.find(what);
    EXPECT_NE(at, std::string::npos) << what;
    return text.replace(at, what.size(), with);
}

TEST(PhotometricFile, HoldsWhatTheComposedFileSays) {
    const PhotometricFile file = read(kQuadrants);
    EXPECT_EQ(file.edition, PhotometricEdition::k2002);
    EXPECT_EQ(file.symmetry, PhotometricSymmetry::kQuadrants);
    EXPECT_EQ(file.type, PhotometricType::kC);
    ASSERT_EQ(file.keywords.size(), 5U);
    EXPECT_EQ(file.keywords[4].key, "LUMINAIRE");
    EXPECT_EQ(file.keywords[4].text, "QUADRANT SYMMETRIC PARSER TEST");
    EXPECT_FALSE(file.lumens_per_lamp) << "-1 stands for absolute photometry";
    EXPECT_DOUBLE_EQ(file.opening.width_m, 0.30);
    EXPECT_DOUBLE_EQ(file.opening.length_m, 1.20);
    EXPECT_DOUBLE_EQ(file.input_watts, 100.0);
    EXPECT_EQ(file.vertical_deg, (std::vector<double>{0, 45, 90}));
    EXPECT_EQ(file.candela[2], (std::vector<double>{600, 200, 0}));
    EXPECT_TRUE(file.warnings.empty());
}

TEST(PhotometricFile, MultipliesAllThreeFactorsIn) {
    const PhotometricFile file =
        read(replaced(replaced(kQuadrants, "-1 1.0 3", "1200 2.0 3"), "1.0 1.0 100", "0.9 1 100"));
    EXPECT_DOUBLE_EQ(file.candela[0][0], 600.0 * 2.0 * 0.9);
    EXPECT_EQ(file.lumens_per_lamp, 1200.0);
    // IESNA91's third factor.
    const PhotometricFile old =
        read(replaced(replaced(kQuadrants, "IESNA:LM-63-2002", "IESNA91"), "1.0 1.0 100", "1 .5 9"));
    EXPECT_DOUBLE_EQ(old.candela[0][0], 300.0);
    EXPECT_TRUE(old.warnings.empty());
}

TEST(PhotometricFile, TurnsFeetIntoMetres) {
    const PhotometricFile file = read(replaced(kQuadrants, "1 2 0.30 1.20 0.0", "1 1 .260 4.000 -.5"));
    EXPECT_TRUE(file.in_feet);
    EXPECT_DOUBLE_EQ(file.opening.width_m, 0.260 * 0.3048);
    EXPECT_DOUBLE_EQ(file.opening.length_m, 4.0 * 0.3048);
    EXPECT_DOUBLE_EQ(file.opening.height_m, -0.5 * 0.3048);
}

TEST(PhotometricFile, KnowsTheSymmetries) {
    const auto symmetry = [](int planes, int type, const std::string& vertical, const std::string& horizontal) {
        std::string numbers = vertical + "\n" + horizontal + "\n";
        for (int i = 0; i < planes; ++i) numbers += "100 100\n";
        return read(photometric_text(2, planes, type, numbers)).symmetry;
    };
    EXPECT_EQ(symmetry(1, 1, "0 90", "0"), PhotometricSymmetry::kAxial);
    EXPECT_EQ(symmetry(2, 1, "0 180", "0 90"), PhotometricSymmetry::kQuadrants);
    EXPECT_EQ(symmetry(2, 1, "90 180", "0 180"), PhotometricSymmetry::kPlane0To180);
    EXPECT_EQ(symmetry(3, 1, "0 90", "0 120 360"), PhotometricSymmetry::kNone);
    EXPECT_EQ(symmetry(3, 2, "-90 90", "-90 0 90"), PhotometricSymmetry::kNone);
    EXPECT_EQ(symmetry(2, 3, "-90 90", "0 90"), PhotometricSymmetry::kLeftEqualsRight);
}

// Accepted without a word: what the standard itself allows.
TEST(PhotometricFile, ReadsNumbersHoweverTheLinesAreBroken) {
    const PhotometricFile plain = read(kQuadrants);
    std::string crlf;
    for (const char c : kQuadrants) crlf += c == '\n' ? std::string("\r\n") : std::string(1, c);
    std::string one_line = kQuadrants;
    for (std::size_t i = one_line.find("1 -1 1.0"); i + 1 < one_line.size(); ++i) {
        if (one_line[i] == '\n') one_line[i] = ' ';
    }
    std::string each_its_own = kQuadrants;
    for (std::size_t i = each_its_own.find("1 -1 1.0"); i < each_its_own.size(); ++i) {
        if (each_its_own[i] == ' ') each_its_own[i] = '\n';
    }
    const std::string commas = replaced(kQuadrants, "600 400 0\n600 300 0\n", "600,400 , 0,\n600,300,0\n");
    const std::string no_last_line_end = kQuadrants.substr(0, kQuadrants.size() - 1);
    for (const std::string& text : {crlf, one_line, each_its_own, commas, no_last_line_end, kQuadrants + " \r\n \n"}) {
        const PhotometricFile file = read(text);
        EXPECT_EQ(file.candela, plain.candela) << text;
        EXPECT_TRUE(file.warnings.empty()) << text << file.warnings.front();
    }
    std::string cr;
    for (const char c : kQuadrants) cr += c == '\n' ? '\r' : c;
    EXPECT_EQ(read(cr).candela, plain.candela);
}

TEST(PhotometricFile, ReadsNumbersWithoutDigitsOnOneSideOfThePoint) {
    // As in a real file of 1991: "1 -1. 1.000000 19 5 1 1 .260 4.000 .000".
    const PhotometricFile file =
        read(replaced(kQuadrants, "1 -1 1.0 3 3 1 2 0.30 1.20 0.0", "1 -1. +1. 3 3 1 1 .260 4.000 .000"));
    EXPECT_FALSE(file.lumens_per_lamp);
    EXPECT_TRUE(file.warnings.empty());
    EXPECT_DOUBLE_EQ(read(replaced(kQuadrants, "600 400 0", "6e2 400 0")).candela[0][0], 600.0);
}

TEST(PhotometricFile, JoinsContinuedKeywords) {
    const PhotometricFile file =
        read(replaced(kQuadrants, "[LUMINAIRE] QUADRANT", "[LUMINAIRE] A\n[MORE] B\n[_OWN] QUADRANT"));
    ASSERT_EQ(file.keywords.size(), 6U);
    EXPECT_EQ(file.keywords[4].text, "A B");
    EXPECT_EQ(file.keywords[5].key, "_OWN");
    EXPECT_TRUE(file.warnings.empty());
}

// The editions, and the lines before TILT of 1986, which are labels.
TEST(PhotometricFile, KnowsTheEditions) {
    const auto edition = [](const std::string& line) { return read(replaced(kQuadrants, "IESNA:LM-63-2002\n", line)); };
    EXPECT_EQ(edition("IESNA91\n").edition, PhotometricEdition::k1991);
    EXPECT_EQ(edition("IESNA:LM-63-1995\n").edition, PhotometricEdition::k1995);
    EXPECT_EQ(edition("IES:LM-63-2019\n").edition, PhotometricEdition::k2019);
    EXPECT_EQ(edition("A SPOT\n").edition, PhotometricEdition::k1986);
    EXPECT_EQ(edition("A SPOT\n").keywords.front().text, "A SPOT");
    EXPECT_EQ(edition("").keywords.front().key, "TEST");
}

struct Quirk {
    std::string what, with;
    std::string at;       // "line:column" of the warning
    std::string warning;  // part of it
};
void PrintTo(const Quirk& quirk, std::ostream* stream) { *stream << quirk.with; }
class Quirks : public testing::TestWithParam<Quirk> {};

// Harmless: the same light comes out, and one warning says where and what.
TEST_P(Quirks, AreAcceptedWithOneWarning) {
    const PhotometricFile file = read(replaced(kQuadrants, GetParam().what, GetParam().with));
    EXPECT_EQ(file.candela, read(kQuadrants).candela);
    ASSERT_EQ(file.warnings.size(), 1U);
    EXPECT_EQ(file.warnings[0].find("lamp.ies:" + GetParam().at + ": "), 0U) << file.warnings[0];
    EXPECT_NE(file.warnings[0].find(GetParam().warning), std::string::npos) << file.warnings[0];
}

INSTANTIATE_TEST_SUITE_P(
    MetInFiles, Quirks,
    testing::Values(
        Quirk{"IESNA:LM", "IESNA: LM", "1:1", "IESNA:LM-63-2002"}, Quirk{"IESNA:LM", "iesna:LM", "1:1", "IESNA:LM-63"},
        Quirk{"IESNA:LM-63-2002", "\xEF\xBB\xBFIESNA:LM-63-2002", "1:1", "byte order mark"},
        Quirk{"IESNA:LM-63-2002\n", "", "1:1", "LM-63-1986"}, Quirk{"[TESTLAB] NONE\n", "", "6:1", "TESTLAB"},
        Quirk{"[MANUFAC] NONE", "[MANUFAC] CAF\xC9", "5:1", "Latin-1"},
        Quirk{"TILT=NONE", "TILT = NONE", "7:1", "TILT=NONE"}, Quirk{"TILT=NONE", "tilt=none", "7:1", "TILT=NONE"},
        Quirk{"TILT=NONE", "\nTILT=NONE", "7:1", "blank line"},
        Quirk{"[TEST] COMPOSED-1", "[MORE] X\n[TEST] COMPOSED-1", "2:1", "[MORE]"},
        Quirk{"TILT=NONE", "a label\nTILT=NONE", "7:1", "label"}, Quirk{"3 3 1 2", "3. 3 1 2", "8:10", "whole number"},
        Quirk{"0 45 90\n0 45 90", "0 45 90\n0\t45\t90", "11:2", "tabs"},
        Quirk{"600 200 0\n", "600 200 0\n\x1A", "15:1", "follows the last value"},
        Quirk{"600 200 0\n", "600 200 0\nEND OF FILE", "15:1", "END"}));

TEST(PhotometricFile, WarnsOfAFutureUseThatIsNotOne) {
    const PhotometricFile file = read(replaced(kQuadrants, "1.0 1.0 100", "1.0 0.5 100"));
    EXPECT_DOUBLE_EQ(file.candela[0][0], 300.0);
    ASSERT_EQ(file.warnings.size(), 1U);
    EXPECT_NE(file.warnings[0].find("lamp.ies:9:5: "), std::string::npos) << file.warnings[0];
}

// Rounds of planes that the edition of 2002 does not allow and files have.
TEST(PhotometricFile, WarnsOfUnusualRounds) {
    const auto warnings = [](int planes, const std::string& numbers) {
        return read(photometric_text(2, planes, 1, "0 90\n" + numbers)).warnings;
    };
    EXPECT_NE(warnings(3, "90 180 270\n1 1\n2 2\n3 3").at(0).find("90-270"), std::string::npos);
    EXPECT_NE(warnings(2, "0 181\n1 1\n2 2").at(0).find("181"), std::string::npos);
    EXPECT_NE(warnings(3, "0 180 345\n1 1\n2 2\n3 3").at(0).find("345"), std::string::npos);
    EXPECT_NE(warnings(3, "0 180 360\n1 1\n2 2\n3 3").at(0).find("0 and 360"), std::string::npos);
    EXPECT_TRUE(warnings(3, "0 180 360\n1 1\n2 2\n1 1").empty());
    const auto sides = read(photometric_text(2, 2, 2, "0 90\n0 90\n1 1\n1 1")).warnings;
    ASSERT_EQ(sides.size(), 1U);
    EXPECT_NE(sides[0].find("below"), std::string::npos);
}

TEST(PhotometricFile, ReadsIncludedTilt) {
    const PhotometricFile file = read(replaced(kQuadrants, "TILT=NONE", "TILT=INCLUDE\n1\n3\n0 45 90\n1.0 .95 .9"));
    ASSERT_TRUE(file.tilt);
    EXPECT_EQ(file.tilt->angles_deg, (std::vector<double>{0, 45, 90}));
    EXPECT_EQ(file.tilt->factors, (std::vector<double>{1.0, 0.95, 0.9}));
    EXPECT_EQ(file.candela, read(kQuadrants).candela);
    ASSERT_EQ(file.warnings.size(), 1U);
    EXPECT_NE(file.warnings[0].find("tilted"), std::string::npos);
}

TEST(PhotometricFile, ReadsATiltFileBesideIt) {
    const ScratchLibrary scratch;
    const std::filesystem::path path = scratch.folder() / "lamp.ies";
    std::ofstream(path) << replaced(kQuadrants, "TILT=NONE", "TILT=lamp.tlt");
    const auto missing = read_photometric_file(path);
    ASSERT_FALSE(missing);
    EXPECT_NE(missing.problems()[0].text.find("lamp.ies:7:1: TILT names \"lamp.tlt\""), std::string::npos);
    std::ofstream(scratch.folder() / "lamp.tlt") << "1\n2\n0 90\n1 0.8\n";
    const auto file = read_photometric_file(path);
    ASSERT_TRUE(file) << all_text(file.problems());
    EXPECT_EQ(file->tilt->factors, (std::vector<double>{1.0, 0.8}));
    std::ofstream(scratch.folder() / "lamp.tlt") << "1\n2\n0 90\n1 x\n";
    const auto broken = read_photometric_file(path);
    ASSERT_FALSE(broken);
    EXPECT_NE(broken.problems()[0].text.find("lamp.tlt:4:3: \"x\" is not a number"), std::string::npos);
}

}  // namespace
}  // namespace understudy
