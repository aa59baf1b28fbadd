// The eyes in the report: in words at its head, in figures further down.
#pragma once

#include <string>

#include "meter/reading.h"

namespace understudy {

// For each eye whether it is lit, what of each light it sees, and its catchlight or why there is none.
std::string eyes_in_words(const MeterReport& report);

std::string eyes_text(const MeterReport& report);
std::string catchlights_text(const MeterReport& report);

}  // namespace understudy
