// The small pink body that fills the inner corner of an eye between the lids.
//
// The mesh has none, and without it one would look past the eyeball into the socket.
#pragma once

#include "sitter/eye.h"
#include "sitter/refine.h"

namespace understudy {

struct Caruncle {
    static constexpr std::size_t kAcross = 7;
    // Its vertices are its own, so that its smooth normals know nothing of the lids' edges that it meets at an angle.
    struct Row {
        std::uint32_t upper, lower;                 // on the lids' inner edges
        std::array<std::uint32_t, kAcross> across;  // from the upper edge to the lower one
    };
    double inward = 1.0;    // the sign of x toward the nose
    std::vector<Row> rows;  // from the corner toward the eye
};

inline constexpr double kCaruncleLength = 0.0042;  // from the corner toward the eye

// Adds its vertices and faces to the head. `inner` is the inner edge of this eye's lids.
Caruncle add_caruncle(RefinedHead& head, const std::vector<std::uint32_t>& inner, bool of_the_right_eye);

// Puts its vertices between the lids, once these are laid.
void place_caruncle(const Caruncle& caruncle, const Eye& eye, std::vector<Double3>& positions);

}  // namespace understudy
