// f-numbers as a photographer meets them: engraved on a lens in third stops, or on a meter as a whole stop and tenths.
//
// Lenses and meters work to the exact powers of √2 and print rounded names for them: the eleventh stop is marked 45 and
// is 45.25. A decimal such as f/5.4 names no mark on any lens, so it is never printed.
#pragma once

#include <string>

namespace understudy {

// The nearest third stop by its mark: "f/9". Beyond the marks, "under f/0.5" or "over f/128"; "none" where there is no
// f-number at all (no light, or not a number).
std::string marked_f_number(double f_number);

// As a hand-held meter shows it: whole stop and tenths of a stop above it, "8 + 3/10"; otherwise as marked_f_number().
std::string whole_stop_and_tenths(double f_number);

// Both: "f/9 (8 + 3/10)".
std::string spoken_f_number(double f_number);

}  // namespace understudy
