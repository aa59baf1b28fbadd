// The report's keys on what is around the sitter.
#pragma once

#include "meter/reading.h"
#include "report/json_parts.h"

namespace understudy {

Json backdrop_json(const MeterReport& report);  // null without one
Json outline_json(const MeterReport& report);   // null without a head in the frame
Json room_json(const MeterReport& report);      // null without walls and ambient light
Json warnings_json(const MeterReport& report);

// Shares of a reading; null in the dark.
Json room_share(const Reading& reading);
Json backdrop_share(const Reading& reading);

}  // namespace understudy
