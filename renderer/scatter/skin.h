// The colour of skin from what is in it: melanin over blood.
#pragma once

#include "scatter/skin_spot.h"
#include "scatter/two_flux.h"
#include "spectrum/spectrum.h"

namespace understudy {

// Absorption of one melanosome, cm⁻¹. S. L. Jacques, "Skin Optics", Oregon Medical Laser Center News, January 1998.
double melanosome_absorption_per_cm(double nm);

// Absorption of skin without blood and melanin, cm⁻¹; same source.
double baseline_absorption_per_cm(double nm);

// Reduced scattering, cm⁻¹: S. L. Jacques, "Optical properties of biological tissues: a review", Phys. Med. Biol. 58,
// 2013, eq. 2 (a Rayleigh and a Mie share).
double dermis_scattering_per_cm(double nm);
double epidermis_scattering_per_cm(double nm);

// The layers that the colour is made of, at one wavelength.
Layer epidermis_layer(double nm, double melanin);
double dermis_reflectance(double nm, double blood);

// The colour below the skin's surface, 0 … 1: what of the light that has passed the surface comes back, for
// CoatedSurface. melanin: volume fraction of melanosomes in the epidermis (light skin 0.013 … 0.063, moderate
// 0.11 … 0.16, dark 0.18 … 0.43: Jacques 1998), in [0, 0.5]; blood: volume fraction in the dermis, in [0, 0.2].
Spectrum skin_albedo(double melanin, double blood);

}  // namespace understudy
