// The shape of single teeth: sizes by kind, and how a crown and the gum over it rise from the row's face.
//
// Heights and depths in metres; a place across a tooth is -1 at its edge toward the row's middle, 0 in its own middle
// and 1 at its far edge.
#pragma once

#include <array>
#include <cstddef>

namespace understudy {

inline constexpr std::size_t kTeethASide = 8;

struct Crown {
    double width = 0.0;      // along the row
    double height = 0.0;     // from the gum's highest point to the biting edge
    double thickness = 0.0;  // from the lips' side to the tongue's, at the gum
    double edge = 0.0;       // thickness of the biting edge
    double corner = 0.0;     // radius of the biting edge's near corner; the far one is rounder
    double point = 0.0;      // by how much the edge's middle stands out over its ends
    double short_of = 0.0;   // by how much it ends before its neighbours
};

// From the middle outward. Widths, heights and thicknesses of the crowns: the table of average permanent teeth in
// Wheeler's "Dental Anatomy, Physiology and Occlusion", from memory; the rest by eye, no source.
extern const std::array<Crown, kTeethASide> kUpperCrowns;
extern const std::array<Crown, kTeethASide> kLowerCrowns;

// The gum's margin over the biting edge: an arch over each tooth, low between two.
double gum_margin(const Crown& crown, double across);

// How far the biting edge is drawn back from the row's line at this place.
double edge_lift(const Crown& crown, double across);

// The crown's face at a height over the biting edge, measured outward from where its middle is; negative in the gaps.
double crown_face(const Crown& crown, double across, double height);

// The gum's face, `along` from the jaw, 0, to the margin, 1.
double gum_face(double across, double along);

}  // namespace understudy
