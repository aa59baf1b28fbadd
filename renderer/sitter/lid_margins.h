// The edges of the lids: how far the eye is open, and how the lids draw together at its corners.
#pragma once

#include <vector>

#include "base/geometry.h"
#include "sitter/eye.h"

namespace understudy {

// Natural heights of the lids over and under the pupil's centre, in a straight gaze: the distance from the middle of
// the pupil to the upper lid is normally 4 to 5 mm (MRD1 of eyelid surgery), so that the lid covers 1 to 2 mm of the
// iris; the lower one meets the limbus or leaves it by less than a millimetre (iris radius: sitter/eye.h). The skin of
// an upper lid and its fold hang up to a millimetre before the edge, so the lowest stands that much higher.
inline constexpr double kUpperLidLow = 0.0047;
inline constexpr double kUpperLidHigh = 0.0050;
inline constexpr double kLowerLidHigh = 0.0050;
inline constexpr double kLowerLidLow = 0.0060;

inline constexpr double kLidClearance = 0.00005;  // of the inner edge above the eye: the tear film and a little more

struct LidMargins {
    std::vector<Double3> inner, outer;  // closed lines, vertex beside vertex
    std::vector<double> stand_off;      // of the inner edge where the caruncle holds it off the eye
};

// Both corners drawn to a point, both lids raised or lowered into the natural range, the inner edges on the eye.
// inward: the sign of x toward the nose.
LidMargins open_naturally(const Eye& eye, double inward, LidMargins margins);

}  // namespace understudy
