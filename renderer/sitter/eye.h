// The optics and sizes of the eye: an eyeball sphere, a corneal sphere that rises from it, an iris plane behind.
//
// Sizes as in schematic eyes (Gullstrand, Le Grand): corneal radius 7.8 mm, index 1.376; visible iris radius 5.9 mm is
// half the white-to-white diameter of 11.71 ± 0.42 mm (Rüfer and others 2005).
#pragma once

#include "base/geometry.h"
#include "sitter/sitter.h"

namespace understudy {

inline constexpr double kEyeballRadius = 0.012;
inline constexpr double kCorneaRadius = 0.0078;
inline constexpr double kIrisRadius = 0.0059;  // where cornea and eyeball meet, as seen from the front
inline constexpr double kCorneaIndex = 1.376;
inline constexpr double kIrisBehindApex = 0.0035;

// Along the axis from the eyeball's centre.
inline constexpr double kLimbusAhead = 0.010449401896759;        // √(12² − 5.9²) mm
inline constexpr double kCorneaCentreAhead = 0.005347441489230;  // the limbus less √(7.8² − 5.9²) mm
inline constexpr double kApexAhead = kCorneaCentreAhead + kCorneaRadius;
inline constexpr double kIrisAhead = kApexAhead - kIrisBehindApex;

inline Double3 cornea_centre(const Eye& eye) { return eye.centre + kCorneaCentreAhead * eye.axis; }
inline Double3 iris_centre(const Eye& eye) { return eye.centre + kIrisAhead * eye.axis; }

}  // namespace understudy
