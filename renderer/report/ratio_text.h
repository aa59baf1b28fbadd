// The lighting ratio in every way of counting, each with the points that it was measured at.
#pragma once

#include <string>

#include "meter/reading.h"

namespace understudy {

std::string ratio_text(const MeterReport& report);

}  // namespace understudy
