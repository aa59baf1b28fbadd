#include "meter/light_colours.h"

#include <cassert>

#include "spectrum/band_weights.h"
#include "spectrum/gel.h"
#include "spectrum/illuminant.h"
#include "spectrum/observer.h"

namespace understudy {

Spectrum white_spectrum(double kelvin, const std::string& illuminant) {
    if (illuminant.empty()) return normalised_to_luminance(spectrum_of_temperature(kelvin));
    const auto named = cie_illuminant(illuminant);
    assert(named);  // the setup has checked the name
    return normalised_to_luminance(*named);
}

Spectrum light_spectrum(const LightColour& colour) {
    return normalised_to_luminance(white_spectrum(colour.kelvin, colour.illuminant) *
                                   stacked_transmission(colour.gels));
}

double gel_share(const LightColour& colour) {
    return luminous_share(white_spectrum(colour.kelvin, colour.illuminant), stacked_transmission(colour.gels));
}

Spectrum ambient_spectrum(const RoomSettings& room) {
    return white_spectrum(room.ambient_kelvin, room.ambient_illuminant);
}

Bands luminous_weights(const Spectrum& spectrum) { return band_weights(spectrum * observer_y()); }

}  // namespace understudy
