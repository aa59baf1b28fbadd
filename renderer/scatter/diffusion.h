// What a thick, evenly scattering body sends back.
#pragma once

namespace understudy {

// The share of light entering a half-space that comes out again, all distances together, by the dipole approximation.
// absorption and reduced_scattering in the same unit, per length; eta: index of the body over that outside.
// Jensen, Marschner, Levoy and Hanrahan, "A Practical Model for Subsurface Light Transport", SIGGRAPH 2001, section 2.
double dipole_reflectance(double absorption, double reduced_scattering, double eta);

}  // namespace understudy
