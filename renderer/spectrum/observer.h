// The CIE 1931 standard observer (2°).
#pragma once

#include "spectrum/spectrum.h"

namespace understudy {

// Tristimulus values; y is the luminance's or illuminance's share where the spectrum is normalised to it.
struct Xyz {
    double x = 0.0;
    double y = 0.0;
    double z = 0.0;
};

const Spectrum& observer_x();
const Spectrum& observer_y();  // also V(λ), the luminous efficiency
const Spectrum& observer_z();

// ∫ spectrum · (x̄, ȳ, z̄) dλ over 380–720 nm, the range that paths carry.
Xyz xyz_of(const Spectrum& spectrum);

// The spectrum scaled so that ∫ spectrum · ȳ dλ = 1 over 380–720 nm. It must give some light.
Spectrum normalised_to_luminance(const Spectrum& spectrum);

}  // namespace understudy
