// Where a scene file puts a thing and what it is turned to; setup/placement.h works out the places.
#pragma once

#include <optional>
#include <variant>

#include "base/geometry.h"
#include "setup/source_place.h"

namespace understudy {

// Like a stand on the studio floor. Exactly one of height_m and elevation_deg, or neither: eye height.
struct StandPlacement {
    double angle_deg = 0.0;  // round the mark from the camera's side, negative = camera left
    std::optional<double> height_m;
    std::optional<double> elevation_deg;
    double distance_m = 1.0;  // from the sitter's face, in a straight line
    SourcePlace said_at;
};

struct Aim {
    enum class Target { kFace, kEyes, kChest, kCrown, kBackdrop, kCamera, kPoint };
    Target target = Target::kFace;
    Double3 point_m{0.0};  // for kPoint
};

struct Placement {
    std::variant<StandPlacement, Double3> where = StandPlacement{};
    Aim aim;
    double feather_deg = 0.0;  // the axis turned away sideways, positive = toward the camera
    // Round the axis, positive = counterclockwise as seen by someone who looks at the front. 0 = height upright.
    double roll_deg = 0.0;
    SourcePlace said_at;
};

}  // namespace understudy
