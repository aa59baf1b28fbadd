// The report's sections on what is around the sitter: backdrop, room, warnings, cautions.
#pragma once

#include <string>

#include "meter/reading.h"

namespace understudy {

// Each begins with a blank line and its heading, and ends with a newline.
std::string backdrop_text(const MeterReport& report);
std::string outline_text(const MeterReport& report);
std::string room_text(const MeterReport& report);  // "" without walls and ambient light
std::string warnings_text(const MeterReport& report);
std::string cautions_text(const MeterReport& report);

}  // namespace understudy
