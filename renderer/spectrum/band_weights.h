// What a band of the film counts when the whole of it is weighed by wavelength: by an observer, a film's response, a
// lamp.
//
// A band keeps only the mean of what it was lit with. Light that sits at one end of a band, as behind a gel whose edge
// falls there, would be given the colour of the whole. So the course within a band is put back first: a parabola that
// has the band's mean and meets its neighbours at the edges. What does not depend on wavelength stays exact.
#pragma once

#include "spectrum/waves.h"

namespace understudy {

// The weights w for which Σ w · mean is ∫ response(λ) · f(λ) dλ over all bands, f being put back from its means. They
// add up to the response's integral; single ones may be below 0.
Bands band_weights(const Spectrum& response);

}  // namespace understudy
