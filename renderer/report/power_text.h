// The report's lines on how strong each light is: joules and where they come from, dials, what to do out of range; and
// the pupils, which the lamps set.
#pragma once

#include <string>

#include "meter/reading.h"

namespace understudy {

std::string powers_text(const MeterReport& report);
std::string pupil_text(const MeterReport& report);

}  // namespace understudy
