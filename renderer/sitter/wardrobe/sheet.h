// A piece of cloth or felt: an open surface in the straight head's metres, cut to an outline and then given thickness.
#pragma once

#include <functional>

#include "sitter/skinned_mesh.h"

namespace understudy {

struct SheetPoint {
    Double3 place{0.0};   // the cloth's outside
    Double3 skin{0.0};    // what it lies over
    Double3 normal{0.0};  // outward, unit
    BoneWeights weights{};
    std::uint32_t vertex = 0;  // of the head's mesh, for a body's sheet
};

struct ClothSheet {
    std::vector<SheetPoint> points;
    std::vector<std::array<std::uint32_t, 3>> triangles;  // counter-clockwise from outside
};

// Negative where there is cloth, growing at about a metre a metre across the outline.
using Outline = std::function<double(const SheetPoint&)>;

// What lies inside the outline, cut cleanly through the triangles; points that nobody needs are left out.
ClothSheet cut(const ClothSheet& sheet, const Outline& outline);

// From the points' places.
void set_normals(ClothSheet& sheet);

// Adds the sheet with a thickness, metres: an outside, an inside as far as `inside_from_edge` metres from its edge, and
// an edge rounded like a hem between them.
void sew(SkinnedMesh& mesh, const ClothSheet& sheet, double thickness, Zone zone, double inside_from_edge);

// A sheet over a grid of points, row by row; closed: each row's end joins its beginning. Outside is where rows are seen
// to lie above one another and columns to run to the right.
ClothSheet grid_sheet(const std::vector<SheetPoint>& points, std::size_t columns, bool closed);

}  // namespace understudy
