// The dial of a flash head: how far down it goes, in which steps, and how its settings are written.
//
// Three notations are in use (common practice, no source): parts of full power ("1/8 + 0.3"), stops from full ("-2.7"),
// and a scale of numbers of which one is a stop ("7.3"). Heads step by tenths of a stop or by thirds, and those that
// step by thirds write a third as .3 and two as .7.
#pragma once

#include <string>
#include <string_view>

#include "base/expected.h"

namespace understudy {

struct Dial {
    enum class Notation { kFractions, kStopsFromFull, kNumbers };
    Notation notation = Notation::kFractions;
    int steps_a_stop = 10;        // 10 or 3
    int lowest_steps = -80;       // the lowest setting, in steps from full
    double number_at_full = 0.0;  // kNumbers: what the display shows at full
};

// A whole number of steps from full, 0 or less.
double stops_of_steps(const Dial& dial, int steps);

// As the head's display shows it, for any number of steps, also such as the dial does not reach.
std::string dial_text(const Dial& dial, int steps);

// "1/256 to 1/1": the lowest and the highest setting.
std::string dial_range_text(const Dial& dial);

// What a text in the dial's notation asks for, in steps from full. The problem's text says only what is wrong and what
// was expected.
Expected<int> read_dial(const Dial& dial, std::string_view text);

// The lowest setting as it is written where the head is described: the same notations, before the range is known.
Expected<int> read_dial_without_range(const Dial& dial, std::string_view text);

// The nearest setting that the head has, and what is left.
struct DialSetting {
    int steps = 0;
    double left_over_stops = 0.0;  // asked for, less set; within the range at most half a step
    double out_by_stops = 0.0;     // over full (+), under the lowest setting (-), 0 within the range
};
DialSetting nearest_setting(const Dial& dial, double stops_from_full);

}  // namespace understudy
