// f-numbers as they are marked: a lens works to the exact powers of √2 and carries rounded names for them. What a
// person writes is such a name, so 5.6 is read as 5.657; half of the light is then a stop, and not 1.03 of one.
#pragma once

#include <string_view>

#include "base/expected.h"

namespace understudy {

inline constexpr int kThirdsAStop = 3;
inline constexpr int kFirstMarkedThird = -6;  // f/0.5
inline constexpr int kLastMarkedThird = 42;   // f/128

// The mark of 2^(third/6), from the first to the last.
const char* mark_of_third(int third);

// The exact f-number that a marked one stands for; the number itself when it is no mark. Thirds go before halves: "13"
// is 12.699 and "1.2" is 1.260, because cameras step by thirds unless told otherwise; 6.7 or 9.5 can only be halves.
double exact_f_number(double marked);

// "8 + 3/10", "5.6 - 1/10", "5.6": as a hand-held meter shows it. The problem's text says only what is wrong and what
// was expected.
Expected<double> read_meter_notation(std::string_view text);

}  // namespace understudy
