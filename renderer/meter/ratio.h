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

// None when nothing was read so.
inline const Reading* find_reading(const std::vector<Reading>& readings, const std::string& point, Receptor receptor,
                                   Facing facing) {
    for (const Reading& reading : readings) {
        if (reading.point == point && reading.receptor == receptor && reading.facing == facing) return &reading;
    }
    return nullptr;
}

}  // namespace understudy
