#include "report/report_text.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <string>

#include <gtest/gtest.h>

#include "report/sample_report.h"

namespace understudy {
namespace {

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

// A word of its own: "inf" in "information" is no number.
bool has_word(const std::string& text, const std::string& wanted) {
    const auto is_letter = [](char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; };
    for (std::size_t at = text.find(wanted); at != std::string::npos; at = text.find(wanted, at + 1)) {
        const std::size_t end = at + wanted.size();
        if ((at == 0 || !is_letter(text[at - 1])) && (end == text.size() || !is_letter(text[end]))) return true;
    }
    return false;
}

TEST(ReportText, SaysWhatAPhotographerAsks) {
    const std::string text = report_text(filled_report());
    for (const char* part : {"Side strip",
                             "Camera: f/4 (4 + 0/10), 1/200 s, ISO 100; EV 11.6 at ISO 100",
                             "120 J",
                             "4800 lm·s",
                             "2000 lm",
                             "continuous",
                             "8 + 0/10",
                             "+2.0",
                             "flat",
                             "a fill with a very long name",
                             "75 %",
                             "25 %",
                             "f/7.1 (5.6 + 6/10)",
                             "lit",
                             "dark",
                             "-0.5",
                             "-4.2",
                             "10:00",
                             "upper lid",
                             "25 % x 50 %",
                             "62 %"}) {
        EXPECT_TRUE(has(text, part)) << part << " is missing from\n" << text;
    }
}

// US Army Subcourse SS0510 (1994), equal flashes at 8 ft and 11 ft: "3:1" to the nearest whole, exactly (11/8)² + 1
// = 2.89.
TEST(ReportText, RatioInStopsAndBothConventions) {
    const std::string text = report_text(filled_report());
    EXPECT_TRUE(has(text, "1.9:1"));
    EXPECT_TRUE(has(text, "2.9:1"));
    EXPECT_TRUE(has(text, "1.5 stops"));  // log2 2.8906 = 1.531
    EXPECT_TRUE(has(text, "1.9:1"));      // (11/8)² = 1.8906
    EXPECT_TRUE(has(text, "cheek-camera-left over cheek-camera-right"));
    EXPECT_TRUE(has(text, "K:F"));
    EXPECT_TRUE(has(text, "(K+F):F"));
}

// A fill s stops under the key: K:F = 2^s, (K+F):F = 2^s + 1; one stop is the handbook's 3:1, two stops its 5:1
// (US Army Subcourse SS0510: fill at half power gives 3:1).
TEST(ReportText, RatioFromStopsUnderTheKey) {
    MeterReport report = filled_report();
    for (const int stops : {1, 2, 3}) {
        const double key_to_fill = std::exp2(stops);
        report.ratio =
            Ratio{key_to_fill + 1.0, std::log2(key_to_fill + 1.0), "camera-right", key_to_fill, key_to_fill + 1.0};
        const std::string text = report_text(report);
        EXPECT_TRUE(has(text, std::to_string(1 << stops) + ".0:1"));
        EXPECT_TRUE(has(text, stops < 3 ? std::to_string((1 << stops) + 1) + ".0:1" : "9.0:1"));
    }
}

TEST(ReportText, StatesItsMeterConstantsOnce) {
    const std::string text = report_text(filled_report());
    const std::size_t first = text.find("C = 250");
    ASSERT_NE(first, std::string::npos);
    EXPECT_EQ(text.find("C = 250", first + 1), std::string::npos);
    EXPECT_TRUE(has(text, "340"));
}

// Ambient five stops under adds log2(1 + 2^-5) = 0.044 stop.
TEST(ReportText, AmbientInStops) {
    const std::string text = report_text(filled_report());
    EXPECT_TRUE(has(text, "-5.0 stops"));
    EXPECT_TRUE(has(text, "adds 0.04 stop"));
}

// 32 lx·s of 160 is a fifth: 0.2 / ln 2 = 0.289 stop.
TEST(ReportText, ErrorInStops) {
    MeterReport report = filled_report();
    EXPECT_FALSE(has(report_text(report), "0.29 "));
    report.readings[0].standard_error_lxs = 32.0;
    EXPECT_TRUE(has(report_text(report), "0.29 "));
}

TEST(ReportText, EmptyStudioSaysSo) {
    const std::string text = report_text(empty_report());
    EXPECT_TRUE(has(text, "No eyes in this scene."));
    EXPECT_TRUE(has(text, "None: it takes two cheeks"));
    EXPECT_TRUE(has(text, "no light"));
}

TEST(ReportText, NothingInfiniteOrUndefinedIsPrinted) {
    for (const MeterReport& report : {filled_report(), empty_report(), spoilt_report()}) {
        std::string text = report_text(report);
        std::transform(text.begin(), text.end(), text.begin(),
                       [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
        for (const char* word : {"inf", "nan", "infinity"}) EXPECT_FALSE(has_word(text, word)) << text;
    }
}

TEST(ReportText, NoControlCodesEvenFromTheTitle) {
    MeterReport report = filled_report();
    report.title = "\x1B[5mblink\x1B[0m";
    report.readings[0].by_light[0].light = "key\a";
    const std::string text = report_text(report);
    EXPECT_TRUE(std::none_of(text.begin(), text.end(),
                             [](char c) { return c != '\n' && static_cast<unsigned char>(c) < 0x20; }));
}

}  // namespace
}  // namespace understudy
