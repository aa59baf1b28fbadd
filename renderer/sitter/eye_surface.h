// The outside of an eye as a distance: the union of the eyeball's and the cornea's spheres.
#pragma once

#include "sitter/eye.h"

namespace understudy {

// Along the unit `way` from the eyeball's centre to the surface.
double eye_surface_radius(const Eye& eye, const Double3& way);

// Height of a point above the eye's surface along the line from the centre; negative inside.
double height_above_eye(const Eye& eye, const Double3& point);

// The point of that line at a height above the surface.
Double3 at_height(const Eye& eye, const Double3& point, double height);

}  // namespace understudy
