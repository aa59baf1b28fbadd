// A head's dial in its three notations. How they are written is common practice, no source; that one number or one
// halving is one stop is arithmetic.
#include "setup/dial.h"

#include <cmath>

#include <gtest/gtest.h>

namespace understudy {
namespace {

Dial fractions(int steps_a_stop) { return {Dial::Notation::kFractions, steps_a_stop, -8 * steps_a_stop, 0.0}; }
Dial stops_from_full(int steps_a_stop) {
    return {Dial::Notation::kStopsFromFull, steps_a_stop, -8 * steps_a_stop, 0.0};
}
// 2.0 to 10.0 in tenths: eight stops.
Dial numbers() { return {Dial::Notation::kNumbers, 10, -80, 10.0}; }

// Stops from full that a text means, or NaN.
double stops_of(const Dial& dial, const char* text) {
    const Expected<int> steps = read_dial(dial, text);
    return steps ? stops_of_steps(dial, *steps) : std::nan("");
}

std::string complaint(const Dial& dial, const char* text) {
    const Expected<int> steps = read_dial(dial, text);
    return steps ? "" : steps.problems().front().text;
}

TEST(Dial, AFractionOfFullPowerIsItsBinaryLogarithm) {
    for (int halvings = 0; halvings <= 8; ++halvings) {
        const std::string text = "1/" + std::to_string(1 << halvings);
        EXPECT_EQ(stops_of(fractions(10), text.c_str()), -halvings) << text;
        EXPECT_EQ(dial_text(fractions(10), -10 * halvings), text);
        EXPECT_EQ(dial_text(fractions(3), -3 * halvings), text);
    }
    EXPECT_EQ(stops_of(fractions(10), "full"), 0.0);
}

TEST(Dial, WhatIsAddedToAFractionIsStops) {
    EXPECT_DOUBLE_EQ(stops_of(fractions(10), "1/8 + 0.3"), -2.7);
    EXPECT_DOUBLE_EQ(stops_of(fractions(10), "1/8+0.3"), -2.7);
    EXPECT_DOUBLE_EQ(stops_of(fractions(10), "1/8 + 3/10"), -2.7);
    EXPECT_DOUBLE_EQ(stops_of(fractions(10), "1/4 - 0.7"), -2.7);
    EXPECT_EQ(dial_text(fractions(10), -27), "1/8 + 0.3");
    EXPECT_EQ(dial_text(fractions(10), -21), "1/8 + 0.9");
}

// A head of third stops shows .3 and .7 and means thirds.
TEST(Dial, ThirdsAreShownAsDecimals) {
    for (const char* text : {"1/8 + 0.3", "1/8 + 0.33", "1/8 + 1/3", "1/4 - 0.7"}) {
        EXPECT_DOUBLE_EQ(stops_of(fractions(3), text), -3.0 + 1.0 / 3.0) << text;
    }
    EXPECT_EQ(dial_text(fractions(3), -8), "1/8 + 0.3");
    EXPECT_EQ(dial_text(fractions(3), -7), "1/8 + 0.7");
    EXPECT_DOUBLE_EQ(stops_of(stops_from_full(3), "-2.7"), -8.0 / 3.0);
    EXPECT_NE(complaint(fractions(3), "1/8 + 0.6").find("steps of a third, nearest \"1/8 + 0.7\""), std::string::npos)
        << complaint(fractions(3), "1/8 + 0.6");
}

TEST(Dial, StopsFromFullAndNumbers) {
    EXPECT_DOUBLE_EQ(stops_of(stops_from_full(10), "-3.0"), -3.0);
    EXPECT_DOUBLE_EQ(stops_of(stops_from_full(10), "0"), 0.0);
    EXPECT_EQ(dial_text(stops_from_full(10), -30), "-3.0");
    EXPECT_EQ(dial_text(stops_from_full(10), 0), "0.0");
    EXPECT_NEAR(stops_of(numbers(), "7.3"), -2.7, 1e-12);
    EXPECT_EQ(dial_text(numbers(), -27), "7.3");
    EXPECT_EQ(dial_range_text(numbers()), "2.0 to 10.0");
    EXPECT_EQ(dial_range_text(fractions(3)), "1/256 to 1/1");
}

// Every setting of every head is read back as itself.
TEST(Dial, WritesWhatItReads) {
    for (const Dial& dial : {fractions(10), fractions(3), stops_from_full(10), stops_from_full(3), numbers()}) {
        for (int steps = dial.lowest_steps; steps <= 0; ++steps) {
            const Expected<int> back = read_dial(dial, dial_text(dial, steps));
            ASSERT_TRUE(back) << back.problems().front().text;
            EXPECT_EQ(*back, steps) << dial_text(dial, steps);
        }
    }
}

TEST(Dial, SaysWhatItCannotRead) {
    struct Row {
        Dial dial;
        const char* text;
        const char* words;
    };
    for (const Row& row :
         {Row{fractions(10), "-3.0", "a part of full power"}, Row{fractions(10), "1/3", "notation"},
          Row{fractions(10), "2/8", "notation"}, Row{fractions(10), "1/8 0.3", "notation"},
          Row{fractions(10), "1/0", "notation"}, Row{fractions(10), "1/8 + nan", "notation"},
          Row{fractions(10), "", "notation"}, Row{fractions(10), "1/", "notation"},
          Row{fractions(10), "1/8 + 0.25", "steps of a tenth"}, Row{fractions(10), "1/512", "1/256 to 1/1"},
          Row{fractions(10), "1/1 + 0.1", "1/256 to 1/1"}, Row{stops_from_full(10), "1/8", "stops from full"},
          Row{stops_from_full(10), "0.5", "-8.0 to 0.0"}, Row{stops_from_full(10), "-8.1", "-8.0 to 0.0"},
          Row{stops_from_full(10), "nan", "notation"}, Row{numbers(), "1/8", "number of the head's scale"},
          Row{numbers(), "1.9", "2.0 to 10.0"}, Row{numbers(), "10.1", "2.0 to 10.0"},
          Row{numbers(), "1e3", "notation"}}) {
        const std::string text = complaint(row.dial, row.text);
        EXPECT_NE(text.find(row.words), std::string::npos) << row.text << ": " << text;
        EXPECT_NE(text.find("; expected "), std::string::npos) << row.text << ": " << text;
    }
}

TEST(Dial, TheNearestSettingAndWhatIsLeft) {
    const DialSetting near = nearest_setting(fractions(3), -2.9);
    EXPECT_EQ(near.steps, -9);
    EXPECT_NEAR(near.left_over_stops, 0.1, 1e-12);
    EXPECT_EQ(near.out_by_stops, 0.0);
    // Half a step over full still rounds to full; more is out of reach.
    EXPECT_EQ(nearest_setting(fractions(10), 0.04).out_by_stops, 0.0);
    EXPECT_NEAR(nearest_setting(fractions(10), 0.7).out_by_stops, 0.7, 1e-12);
    EXPECT_EQ(nearest_setting(fractions(10), 0.7).steps, 0);
    EXPECT_NEAR(nearest_setting(numbers(), -9.5).out_by_stops, -1.5, 1e-12);
    EXPECT_EQ(nearest_setting(numbers(), -9.5).steps, -80);
    EXPECT_EQ(nearest_setting(numbers(), -HUGE_VAL).steps, -80);
}

}  // namespace
}  // namespace understudy
