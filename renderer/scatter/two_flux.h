// How much diffuse light turbid layers send back and let through: the two fluxes, up and down, of Kubelka and Munk.
#pragma once

namespace understudy {

struct Layer {
    double reflectance = 0.0;
    double transmittance = 0.0;
};

// absorption > 0 and reduced_scattering > 0 per unit of length, thickness >= 0 in that unit: no boundaries, light from
// all sides alike. P. Kubelka, "New Contributions to the Optics of Intensely Light-Scattering Materials, Part I", J.
// Opt. Soc. Am. 38, 1948.
//
// His K and S from a medium's own coefficients: K = √3 µa, S = √3/2 µs′, the quadrature form of the two-stream methods
// (W. E. Meador and W. R. Weaver, "Two-Stream Approximations to Radiative Transfer in Planetary Atmospheres", J. Atmos.
// Sci. 37, 1980, table 1; isotropic with µs′). It fades with depth just as diffusion does. The form usual in tissue
// optics, K = 2 µa and S = 3/4 µs′ − 1/4 µa, has a negative S where there is more melanin than scattering.
Layer two_flux_layer(double absorption, double reduced_scattering, double thickness);

// The same without an end.
double two_flux_half_space(double absorption, double reduced_scattering);

// What the layer over something of this reflectance sends back: P. Kubelka, Part II of the same, J. Opt. Soc. Am. 44,
// 1954.
double reflectance_over(const Layer& layer, double below);

// Of the diffuse light that meets its boundary to air from within, the share that a medium of this index keeps; index
// in (1, 2]. Fitted by W. G. Egan and T. W. Hilgeman, Optical Properties of Inhomogeneous Materials, 1979.
double internal_reflectance(double index);

// Of the light that has passed the boundary, the share that comes out again: J. L. Saunderson, "Calculation of the
// Color of Pigmented Plastics", J. Opt. Soc. Am. 32, 1942, without the outer reflection.
double reflectance_through_boundary(double below, double internal);

}  // namespace understudy
