// The meter's report for a photographer: tables in plain words, without colours or control codes.
#pragma once

#include <string>

#include "meter/reading.h"

namespace understudy {

// Every section in order: camera, the eyes and the face in words, lights, readings, shares, ratio, ambient, room,
// backdrop, eyes and catchlights in figures, warnings, cautions. Ended by a newline.
std::string report_text(const MeterReport& report);

}  // namespace understudy
