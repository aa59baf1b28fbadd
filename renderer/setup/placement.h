// Places like a stand's on the studio floor, turned into points and axes.
#pragma once

#include "base/expected.h"
#include "base/geometry.h"
#include "setup/setup.h"

namespace understudy {

// What an aim or a distance may refer to.
struct StudioPoints {
    Double3 face{0.0};  // midway between the eyes, the head straight; stands are placed from it
    Double3 chest{0.0};
    Double3 crown{0.0};
    Double3 backdrop{0.0};  // behind the head
    Double3 camera{0.0};
};

// The front's centre, its axis (unit, out of the front), and the directions that its width and height run along.
// right and up are as seen by someone who looks at the front from outside: right × up = axis.
struct PlacedFront {
    Double3 centre{0.0};
    Double3 axis{0.0, 0.0, 1.0};
    Double3 right{1.0, 0.0, 0.0};
    Double3 up{0.0, 1.0, 0.0};
};

// A height that the distance cannot reach is a problem that says the smallest distance that can.
Expected<Double3> stand_position(const StandPlacement& stand, const Double3& face);

// Position, aim, feather and roll together. An aim at the place itself is a problem.
Expected<PlacedFront> place_front(const Placement& placement, const StudioPoints& points);

}  // namespace understudy
