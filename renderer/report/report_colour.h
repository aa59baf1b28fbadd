// The lights' colours and gels, for the printed report and for JSON.
#pragma once

#include <string>
#include <vector>

#include <nlohmann/json_fwd.hpp>

#include "meter/colour_reading.h"

namespace understudy {

std::string colours_text(const std::vector<ColourReading>& colours);
nlohmann::ordered_json colours_json(const std::vector<ColourReading>& colours);

}  // namespace understudy
