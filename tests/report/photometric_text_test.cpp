#include "report/photometric_text.h"

#include <sstream>

#include <gtest/gtest.h>

#include "report/polar_plot.h"
#include "report/table.h"
#include "support/photometric_examples.h"

namespace understudy {
namespace {

std::string told(const std::string& text) {
    const auto file = parse_photometric_file(text, "lamp.ies");
    return file ? photometric_text(*file) : file.problems()[0].text;
}

void expect_fits(const std::string& text) {
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        EXPECT_LE(display_width(line), 80U) << line;
        EXPECT_TRUE(line.empty() || line.back() != ' ') << "'" << line << "'";
    }
}

// Flux and peak as computed apart from this program; the angles by hand from the file's straight lines: half of 600 cd
// lies a quarter of the way from 400 at 45 to 0 at 90, and three quarters from 600 at 0 to 200 at 45.
TEST(PhotometricText, TellsWhatTheComposedFileHolds) {
    const std::string text = told(kQuadrants);
    expect_fits(text);
    for (const char* words : {"LM-63-2002", "[LUMINAIRE]", "QUADRANT SYMMETRIC PARSER TEST", "measured absolutely",
                              "1369.9 lm", "600 cd at vertical 0, horizontal 0", "four quadrants alike",
                              "3 horizontal angles from 0 to 90", "a rectangle, 0.3 m wide and 1.2 m long", "100 W",
                              "(112.5)", "(166.5)", "(67.5)", "-76.5 to 76.5 (153.0)", "the outer ring is 600 cd"}) {
        EXPECT_NE(text.find(words), std::string::npos) << words << "\n" << text;
    }
    EXPECT_EQ(text.find("warnings"), std::string::npos);
}

TEST(PhotometricText, BreaksLongKeywordsAndListsWarnings) {
    std::string keywords;
    for (int i = 0; i < 30; ++i) keywords += " brightly";
    std::string text = kQuadrants;
    text.replace(text.find("TILT=NONE"), 9, "[OTHER]" + keywords + "\ntilt=none");
    const std::string out = told(text);
    EXPECT_NE(out.find("warnings\n  lamp.ies:8:1: "), std::string::npos) << out;
    expect_fits(out.substr(0, out.find("warnings")));
}

TEST(PhotometricText, TellsOfTheSidewaysTypesAndOfLightBehind) {
    const std::string flood = told(photometric_text(3, 3, 2, "-90 0 90\n-90 0 90\n0 0 0\n0 100 0\n0 0 0"));
    expect_fits(flood);
    EXPECT_NE(flood.find("type B (poles to the sides)"), std::string::npos) << flood;
    EXPECT_NE(flood.find("-45.0 to 45.0 (90.0)"), std::string::npos) << flood;
    const std::string bulb = told(photometric_text(2, 1, 1, "0 180\n0\n100 100"));
    expect_fits(bulb);
    EXPECT_NE(bulb.find("1256.6 lm (628.3 lm ahead, 628.3 lm behind)"), std::string::npos) << bulb;
    EXPECT_NE(bulb.find("none"), std::string::npos) << "it never falls to a half";
}

// A ring of one strength is round on a screen whose characters are twice as high as wide.
TEST(PolarPlot, DrawsWhatItIsGiven) {
    const PolarPlot even([](double) { return 1.0; }, true);
    ASSERT_EQ(even.lines().size(), 19U);
    EXPECT_EQ(even.lines()[9].front(), '*');
    EXPECT_EQ(even.lines()[9].back(), '*');
    EXPECT_EQ(even.lines()[0][18], '*');
    EXPECT_EQ(even.lines()[18][18], '*');
    EXPECT_EQ(even.lines()[9][18], '+');
    EXPECT_EQ(even.lines()[5][18], ':');
    EXPECT_EQ(even.lines()[0][0], ' ');
    // Only from 30 to 60 degrees, half as strong: below the middle, to the right.
    const PolarPlot side([](double angle) { return angle > 30.0 && angle < 60.0 ? 0.5 : 0.0; }, false);
    ASSERT_EQ(side.lines().size(), 10U);
    for (const std::string& line : side.lines()) EXPECT_EQ(line.substr(0, 18).find('*'), std::string::npos) << line;
    EXPECT_EQ(side.lines()[3][24], '*');  // 9 rows and 18 columns × ½ × sin, cos 45°: 3.2 and 6.4
}

}  // namespace
}  // namespace understudy
