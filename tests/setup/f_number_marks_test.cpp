#include "setup/f_number_marks.h"

#include <array>
#include <cmath>

#include <gtest/gtest.h>

namespace understudy {
namespace {

// Marked and exact f-numbers as published side by side (scantips.com, "f-stop chart"; the last digits are of 2^(k/6)
// and 2^(k/4)).
TEST(FNumberMarks, AMarkStandsForItsExactPower) {
    const auto table = std::to_array<std::array<double, 2>>({{1.1, 1.12246},
                                                             {1.2, 1.25992},
                                                             {1.4, 1.41421},
                                                             {2.8, 2.82843},
                                                             {3.2, 3.17480},
                                                             {3.5, 3.56359},
                                                             {4.5, 4.48985},
                                                             {5.0, 5.03968},
                                                             {5.6, 5.65685},
                                                             {6.3, 6.34960},
                                                             {7.1, 7.12719},
                                                             {8.0, 8.0},
                                                             {9.0, 8.97970},
                                                             {11.0, 11.31371},
                                                             {14.0, 14.25438},
                                                             {18.0, 17.95939},
                                                             {22.0, 22.62742},
                                                             {29.0, 28.50876},
                                                             {45.0, 45.25483}});
    for (const auto& row : table) EXPECT_NEAR(exact_f_number(row[0]), row[1], 5e-6) << row[0];
    const auto halves = std::to_array<std::array<double, 2>>({{1.7, 1.6818},
                                                              {2.4, 2.3784},
                                                              {3.3, 3.3636},
                                                              {4.8, 4.7568},
                                                              {6.7, 6.7272},
                                                              {9.5, 9.5137},
                                                              {19.0, 19.0273},
                                                              {27.0, 26.9087}});
    for (const auto& row : halves) EXPECT_NEAR(exact_f_number(row[0]), row[1], 5e-5) << row[0];
}

// 13 is a third (12.699) and a half (13.454), 1.2 a third (1.260) and a half (1.189): cameras step by thirds.
TEST(FNumberMarks, ThirdsGoBeforeHalves) {
    EXPECT_NEAR(exact_f_number(13.0), 12.69921, 5e-6);
    EXPECT_NEAR(exact_f_number(1.2), 1.25992, 5e-6);
}

TEST(FNumberMarks, WhatIsNoMarkStaysAsItIs) {
    for (const double number : {5.7, 5.65685, 3.0, 0.3, 200.0}) EXPECT_EQ(exact_f_number(number), number);
}

// Neighbouring whole stops are one stop apart, which the marks themselves are not: 2 log2(5.6/4) is 0.971.
TEST(FNumberMarks, WholeStopsAreAWholeStopApart) {
    const std::array marks{1.0, 1.4, 2.0, 2.8, 4.0, 5.6, 8.0, 11.0, 16.0, 22.0, 32.0, 45.0};
    for (std::size_t i = 1; i < marks.size(); ++i) {
        EXPECT_NEAR(2.0 * std::log2(exact_f_number(marks[i]) / exact_f_number(marks[i - 1])), 1.0, 1e-12) << marks[i];
    }
}

// How a hand-held meter shows its reading (common practice, no source): 8 + 3/10 is 6.3 stops over f/1.
TEST(FNumberMarks, TheMetersNotation) {
    EXPECT_NEAR(*read_meter_notation("8 + 3/10"), std::exp2(6.3 / 2.0), 1e-12);
    EXPECT_NEAR(*read_meter_notation("5.6+0/10"), std::exp2(2.5), 1e-12);
    EXPECT_NEAR(*read_meter_notation("11 - 1/10"), std::exp2(6.9 / 2.0), 1e-12);
    EXPECT_NEAR(*read_meter_notation("4"), 4.0, 1e-12);
    for (const char* text : {"", "f/4", "8 + 3", "8 + 3/5", "8 + 12/10", "8 3/10", "8 + 0.3", "-8 + 1/10", "0", "nan",
                             "inf + 1/10", "8 + 3/10 x"}) {
        EXPECT_FALSE(read_meter_notation(text)) << text;
    }
}

}  // namespace
}  // namespace understudy
