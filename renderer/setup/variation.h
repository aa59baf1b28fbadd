// What a person wants to see side by side: one place of the scene file, and the values that it takes in turn.
#pragma once

#include <string>
#include <vector>

#include "base/expected.h"

namespace understudy {

inline constexpr int kMostRangeValues = 48;

struct Variation {
    std::string key;                  // as it was given: "light.key.modifier"
    std::vector<std::string> path;    // "light", "key", "modifier"
    std::vector<std::string> values;  // as a scene file would write them: "strip-30x120", "0.6 m"
    std::string option = "--vary";    // that it was given with, for messages
};

// KEY=VALUE,VALUE,…: the key's parts with dots between them, a part with a dot in it in quotes. A value may be a range:
// FIRST..LAST/COUNT is so many values, both ends included, evenly spaced ("0.6 m..2 m/5"), FIRST..LAST*COUNT the same
// in even ratio. Commas inside quotes, brackets and braces divide nothing.
// option: that it was given with, for messages.
Expected<Variation> read_variation(const std::string& argument, const std::string& option = "--vary");

// A part of a key as it is written there: in quotes where it is more than letters, digits, _ and -.
std::string key_part(const std::string& name);

// How messages call it, "--vary light.key.modifier", and one of its values, "--vary light.key.modifier=strip-30x120".
std::string argument_of(const Variation& variation);
std::string argument_of(const Variation& variation, const std::string& value);

}  // namespace understudy
