// Lighting ratio from readings that have been taken.
#pragma once

#include <optional>
#include <vector>

#include "meter/reading.h"

namespace understudy {

// None without two cheeks. A cheek or a face without any fill gives an infinite ratio.
std::optional<Ratio> lighting_ratio(const std::vector<Reading>& readings);

// Of the two cheeks' readings; none without any.
const Reading* brighter_cheek(const std::vector<Reading>& readings);

const Reading* find_reading(const std::vector<Reading>& readings, const std::string& point, Receptor receptor,
                            Facing facing);

}  // namespace understudy
