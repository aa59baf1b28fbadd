// Where garments end: outlines on the straight body, from the pivots of its bones. Sizes of the trade's usual cuts on a
// person of middling size; common practice, no source.
#pragma once

#include "sitter/skeleton.h"
#include "sitter/wardrobe/sheet.h"

namespace understudy {

// A little under the pit of the throat, rising toward the nape and to the sides as a round neck does.
Outline crew_neckline(const Double3& neck_base);
// Round the middle of the neck.
Outline high_neckline(const Double3& neck_base);
// Straight across the chest, the arms left out.
Outline strapless_edge(const BonePivots& pivots);

struct ShirtFront {
    double open_to_m = 0.115;       // how far under the neck's base the opening ends
    double half_width_m = 0.048;    // of the opening, up at the collar
    double collar_ends_deg = 47.0;  // of each side, from the middle: at the opening's edge
};
// Round the base of the neck.
Outline collar_seam(const Double3& neck_base);
// The shirt without its collar.
Outline shirt_opening(const Double3& neck_base, const ShirtFront& front);
// The double strip that the buttons close.
Outline placket(const Double3& neck_base, const ShirtFront& front);

}  // namespace understudy
