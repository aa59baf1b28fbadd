// How wide the pupils stand open, from the light that is on all the time: lamps and room. A flash is over long before a
// pupil moves.
//
// Diameters are as seen through the cornea, which is how people see and measure a pupil (the entrance pupil).
#pragma once

#include "sitter/eye.h"

namespace understudy {

// Stanley and Davies 1995: D = 7.75 − 5.75 · F'/(F' + 2) mm, F' = (F/846)^0.41, F in cd/m² · deg².
double stanley_davies_pupil_mm(double flux_cdm2_deg2);

// Watson and Yellott, "A unified formula for light-adapted pupil size", Journal of Vision 12(10):12, 2012. flux:
// luminance times the field's area, as above; one eye alone counts a tenth. age: 20 to 83.
double watson_yellott_pupil_mm(double flux_cdm2_deg2, int eyes, double age_years);

inline constexpr double kPupilAge = 30.0;

// For two eyes of that age that look into this illuminance (at the eye, square to its axis): luminance times area is
// the illuminance times the square degrees in a steradian, wherever in the field of view the light is.
double pupil_mm_of_illuminance(double lux);

// The cornea magnifies the pupil: a surface of radius r between index n and air, the pupil at depth t behind it, makes
// an image n r / (n r − (n − 1) t) as wide (Gullstrand's equation); 1.14 here, 1.13 in the schematic eyes.
inline constexpr double kPupilMagnification =
    kCorneaIndex * kCorneaRadius / (kCorneaIndex * kCorneaRadius - (kCorneaIndex - 1.0) * kIrisBehindApex);

inline double pupil_radius_behind_cornea_m(double seen_diameter_m) {
    return 0.5 * seen_diameter_m / kPupilMagnification;
}
inline double pupil_seen_m(double radius_behind_cornea_m) { return 2.0 * radius_behind_cornea_m * kPupilMagnification; }

}  // namespace understudy
