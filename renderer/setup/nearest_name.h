// What somebody may have meant by a name that does not exist.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace understudy {

// Insertions, deletions, substitutions and swaps of neighbours between two words, no letter touched twice: the slips of
// a typist (Damerau, Communications of the ACM 7(3), 1964).
std::size_t edit_distance(std::string_view a, std::string_view b);

// The nearest of the valid names if it is close (a third of its letters or one), else "".
std::string nearest_name(std::string_view given, const std::vector<std::string>& valid);

// "one of a, b, c; did you mean "b"?", the second part only if one is close.
std::string expected_names(std::string_view given, const std::vector<std::string>& valid);

}  // namespace understudy
