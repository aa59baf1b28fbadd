// Lids that lie on the eye.
//
// A shaped head's lids were made for another eyeball. Each lid margin's inner edge is laid on the eye's surface, its
// outer edge a lid's thickness above it, the opening is brought into a natural range, and the skin round about follows
// smoothly.
#pragma once

#include "sitter/lid_margins.h"
#include "sitter/refine.h"

namespace understudy {

// A vertex near a corner of the eye, where the skin is evened out after the lids are drawn together.
struct CornerVertex {
    std::uint32_t vertex = 0;
    std::vector<std::uint32_t> neighbours;
    double strength = 0.0;  // 1 at the corner, 0 where it ends
};

struct LidRegion {
    double inward = 1.0;               // the sign of x toward the nose
    std::vector<std::uint32_t> inner;  // margin loops of the refined mesh
    std::vector<std::uint32_t> outer;
    std::vector<std::uint32_t> near;                 // every vertex that may have to move, margins left out
    std::vector<bool> on_skin_side;                  // one a vertex of `near`
    std::vector<std::vector<std::uint32_t>> behind;  // one a vertex of `near`: the neighbours of one behind the lids
    std::vector<CornerVertex> corners;
};

LidRegion lid_region(const std::vector<Double3>& positions, const std::vector<Quad>& quads,
                     const RefinedEyeMargins& margins, const Double3& eye_centre);

// The positions with the lids of this region laid on `eye`, open by this share of what is natural
// (sitter/lid_opening.h).
void lay_lids(const LidRegion& region, const Eye& eye, double opening, std::vector<Double3>& positions);

}  // namespace understudy
