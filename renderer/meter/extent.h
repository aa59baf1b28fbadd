// How far a light's front or a panel reaches: points spread over it and along its edge, enough to tell what it stands
// over, under and behind. A front is taken as thin: the depth of a box behind it, stands and booms are not modelled.
#pragma once

#include <string>
#include <vector>

#include "base/geometry.h"
#include "stage/stage.h"
#include "stage/studio.h"

namespace understudy {

struct Standing {
    std::string name;
    std::vector<Double3> points;
};

// The lights in the setup's order, then the panels.
std::vector<Standing> standing_things(const Studio& studio, const Stage& stage);

}  // namespace understudy
