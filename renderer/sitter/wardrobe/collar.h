// A collar: a strip that stands up from a seam round the neck, turns over and falls onto the garment.
#pragma once

#include "sitter/skeleton.h"
#include "sitter/wardrobe/sheet.h"

namespace understudy {

// Where an outline crosses a laid layer round the neck, from the sitter's right front over the nape to the left front,
// evenly spaced. front_deg: how far each end stops short of the middle of the front, seen from above.
std::vector<SheetPoint> neck_seam(const ClothSheet& layer, const Outline& outline, const Double3& neck_base,
                                  double front_deg, std::size_t count);

// Along the seam each size goes from the nape's to the front's.
struct CollarCut {
    double stand_nape_m = 0.030;
    double stand_front_m = 0.020;  // but for its end, where it sinks and the collar lies flat
    double fall_nape_m = 0.040;
    double fall_front_m = 0.062;
    double points_from = 0.62;   // share of the half collar from which the fall grows longer
    double spread = 0.4;         // how far the front edge slants back: 0 hangs straight down
    double clearance_m = 0.003;  // over what it falls on
};

// `under`: the layer that it lies on.
ClothSheet collar(const std::vector<SheetPoint>& seam, const CollarCut& shape, const ClothSheet& under);

}  // namespace understudy
