#include "meter/light_colours.h"

#include <cassert>

#include "spectrum/illuminant.h"
#include "spectrum/observer.h"

namespace understudy {

Spectrum light_spectrum(const LightColour& colour) {
    if (colour.illuminant.empty()) return normalised_to_luminance(spectrum_of_temperature(colour.kelvin));
    const auto named = cie_illuminant(colour.illuminant);
    assert(named);  // the setup has checked the name
    return normalised_to_luminance(*named);
}

Spectrum ambient_spectrum(const RoomSettings& room) {
    return normalised_to_luminance(spectrum_of_temperature(room.ambient_kelvin));
}

Bands luminous_weights(const Spectrum& spectrum) { return band_integrals(spectrum * observer_y()); }

}  // namespace understudy
