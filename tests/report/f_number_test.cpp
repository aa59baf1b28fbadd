#include "report/f_number.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include <gtest/gtest.h>

namespace understudy {
namespace {

// ISO 517 gives the whole stops; the thirds are as engraved on cameras. Exact values are 2^(k/6), from f/1 on.
const std::vector<std::string> kMarks = {
    "1",   "1.1", "1.2", "1.4", "1.6", "1.8", "2",  "2.2", "2.5", "2.8", "3.2", "3.5", "4",  "4.5", "5",  "5.6", "6.3",
    "7.1", "8",   "9",   "10",  "11",  "13",  "14", "16",  "18",  "20",  "22",  "25",  "29", "32",  "36", "40",  "45"};

double third(int k) { return std::exp2(k / 6.0); }

TEST(FNumber, EveryExactThirdHasItsMark) {
    for (int k = 0; k < static_cast<int>(kMarks.size()); ++k) {
        EXPECT_EQ(marked_f_number(third(k)), "f/" + kMarks[static_cast<std::size_t>(k)]) << "2^(" << k << "/6)";
    }
}

TEST(FNumber, ItsOwnMarkedValueReadsBackAsTheSameMark) {
    for (const std::string& mark : kMarks) EXPECT_EQ(marked_f_number(std::stod(mark)), "f/" + mark);
}

// Exact values as published beside their marks: scantips.com, "f-stop chart"; the last digits are of 2^(k/6).
TEST(FNumber, PublishedExactValues) {
    EXPECT_EQ(marked_f_number(3.56359), "f/3.5");
    EXPECT_EQ(marked_f_number(6.34960), "f/6.3");
    EXPECT_EQ(marked_f_number(12.69921), "f/13");
    EXPECT_EQ(marked_f_number(28.50876), "f/29");
    EXPECT_EQ(marked_f_number(22.62742), "f/22");
}

// The trap of the half-stop series: its 13 is 13.454, and that lies between the thirds 13 (12.699) and 14 (14.254).
TEST(FNumber, ChangesMarkHalfwayBetweenThirds) {
    EXPECT_EQ(marked_f_number(std::exp2(22.49 / 6.0)), "f/13");
    EXPECT_EQ(marked_f_number(std::exp2(22.51 / 6.0)), "f/14");
}

TEST(FNumber, NoDecimalThatNoLensHas) {
    for (double n = 1.0; n < 45.0; n *= 1.003) {
        const std::string mark = marked_f_number(n).substr(2);
        EXPECT_NE(std::find(kMarks.begin(), kMarks.end(), mark), kMarks.end()) << n << " as " << mark;
    }
}

// "8 + 3/10" is how hand-held meters write it (common practice, no source): f/9 on a lens, 6.3 stops over f/1.
TEST(FNumber, WholeStopAndTenths) {
    EXPECT_EQ(whole_stop_and_tenths(std::exp2(6.3 / 2.0)), "8 + 3/10");
    EXPECT_EQ(spoken_f_number(std::exp2(6.3 / 2.0)), "f/9 (8 + 3/10)");
    EXPECT_EQ(whole_stop_and_tenths(4.0), "4 + 0/10");
    EXPECT_EQ(whole_stop_and_tenths(5.65685), "5.6 + 0/10");
    EXPECT_EQ(whole_stop_and_tenths(22.484), "22 + 0/10");  // 8.98 stops: up to the next whole stop, never "16 + 10/10"
    EXPECT_EQ(whole_stop_and_tenths(std::exp2(6.96 / 2.0)), "11 + 0/10");
    EXPECT_EQ(whole_stop_and_tenths(std::exp2(-0.7 / 2.0)), "0.7 + 3/10");
}

// f/1 … f/45 in tenths: the whole stop is the one below, and both together give the number back to a twentieth of a
// stop.
TEST(FNumber, TenthsGiveTheNumberBack) {
    const std::vector<std::string> whole = {"1", "1.4", "2", "2.8", "4", "5.6", "8", "11", "16", "22", "32"};
    for (int tenths = 0; tenths < 110; ++tenths) {
        const std::string expected = whole[static_cast<std::size_t>(tenths / 10)] + " + " + std::to_string(tenths % 10);
        EXPECT_EQ(whole_stop_and_tenths(std::exp2((tenths + 0.4) / 20.0)), expected + "/10");
        EXPECT_EQ(whole_stop_and_tenths(std::exp2((tenths - 0.4) / 20.0)), expected + "/10");
    }
}

TEST(FNumber, SaysWhenThereIsNoMark) {
    EXPECT_EQ(spoken_f_number(0.1), "under f/0.5");
    EXPECT_EQ(spoken_f_number(400.0), "over f/128");
    EXPECT_EQ(spoken_f_number(0.0), "none");
    EXPECT_EQ(spoken_f_number(-4.0), "none");
    EXPECT_EQ(marked_f_number(std::numeric_limits<double>::infinity()), "none");
    EXPECT_EQ(whole_stop_and_tenths(std::numeric_limits<double>::quiet_NaN()), "none");
}

}  // namespace
}  // namespace understudy
