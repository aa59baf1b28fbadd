// The meter's report for other programs: one JSON object, numbers in the units of their names.
//
// What does not exist is null and never 0: an f-number where no light falls, stops of nothing, catchlights without
// eyes. No number in it is infinite or undefined. "clock" is to the nearest five minutes; "clock_deg" beside it is
// exact.
#pragma once

#include <string>

#include "meter/reading.h"

namespace understudy {

// Indented by two, ended by a newline.
std::string report_json(const MeterReport& report);

}  // namespace understudy
