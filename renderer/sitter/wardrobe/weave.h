// The small relief of cloth, too fine for the mesh: threads, ribs and nap, as slopes of its surface.
#pragma once

#include "base/geometry.h"
#include "setup/wardrobe_settings.h"

namespace understudy {

struct WeaveOf {
    Fabric fabric = Fabric::kJersey;
    bool ribbed = false;     // round the neck
    Double3 neck_base{0.0};  // on the straight head; where ribs run round
};

// The gradient of the relief's height, a length a length, at a place of the straight head's cloth. Pitches and depths
// by eye: no cloth was measured.
Double3 weave_slope(const WeaveOf& weave, const Double3& straight);

}  // namespace understudy
