// Where a light, a panel or the camera stands and where it points.
#pragma once

#include <optional>

#include "setup/setup.h"
#include "setup/table_reader.h"

namespace understudy {

struct PlacementDefaults {
    double angle_deg = 0.0;
    std::optional<double> height_m;  // none, and no elevation: the sitter's eye height
    double distance_m = 1.0;
    bool is_camera = false;  // height may be "eye", it cannot aim at itself, and there is nothing to feather
    std::optional<double> elevation_deg = std::nullopt;  // instead of a height
};

// eye_height_m: none if the sitter's is wrong; then no height is checked against it.
Placement read_placement(TableReader& table, const PlacementDefaults& defaults, std::optional<double> eye_height_m);

}  // namespace understudy
