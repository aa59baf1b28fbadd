// Where the meter is held, and how.
#pragma once

#include <string>
#include <vector>

#include "meter/reading.h"
#include "stage/studio.h"

namespace understudy {

struct MeterPoint {
    std::string name;
    Receptor receptor = Receptor::kFlat;
    Facing facing = Facing::kSurface;
    Double3 position{0.0};
    Double3 normal{0.0, 0.0, 1.0};
    bool free_of_sitter = false;
};

// The face free of the sitter with both receptors toward camera and key; the landmarks on the skin, or the ball's
// front; the backdrop behind the head.
std::vector<MeterPoint> meter_points(const Studio& studio);

}  // namespace understudy
