#include "meter/light_hues.h"

#include <cmath>

#include "meter/integrate.h"
#include "meter/light_colours.h"
#include "spectrum/band_weights.h"
#include "spectrum/colour_temperature.h"
#include "spectrum/observer.h"

namespace understudy {
namespace {

// Of each tristimulus value; they come from the same paths, so their ratios are better known still. 0.3 % of one of
// them is about 10 K at 5500 K.
constexpr Precision kPrecision{0.003, 0.0};

struct Seen {
    const Stage& nobody;
    Gathering place;
    std::size_t layer = 0;
    const Spectrum& light;
};

double response(const Seen& seen, const Spectrum& observer) {
    std::vector<Bands> weights(seen.nobody.layer_count(), Bands{});
    weights[seen.layer] = band_weights(seen.light * observer);
    return gather_light(seen.nobody, seen.place, weights, kPrecision).layers[seen.layer].mean;
}

ColourReading with_colour(ColourReading reading, const Xyz& colour) {
    if (!(colour.y > 0.0)) return reading;
    const Chromaticity chromaticity = chromaticity_of(colour);
    reading.x = chromaticity.x;
    reading.y = chromaticity.y;
    if (const auto temperature = nearest_colour_temperature(colour)) {
        reading.kelvin = temperature->kelvin;
        reading.duv = temperature->duv;
    }
    return reading;
}

}  // namespace

std::vector<ColourReading> read_colours(const Studio& studio, const Stage& nobody, const LitStudio& lit) {
    std::vector<ColourReading> readings;
    for (std::size_t i = 0; i < lit.layers.size(); ++i) {
        ColourReading reading;
        reading.light = lit.layers[i].light;
        Gathering place;
        place.position = Vec3(studio.face);
        place.normal = Vec3(0.0F, 0.0F, 1.0F);
        if (i < studio.setup.lights.size()) {
            const LightColour& colour = studio.setup.lights[i].colour;
            reading.gels = colour.gels;
            if (!colour.gels.empty()) reading.gel_loss_stops = -std::log2(gel_share(colour));
            place.normal = Vec3(glm::normalize(studio.lights[i].centre - studio.face));
        }
        const Seen seen{nobody, place, i, lit.layers[i].spectrum};
        readings.push_back(with_colour(
            reading, {response(seen, observer_x()), response(seen, observer_y()), response(seen, observer_z())}));
    }
    return readings;
}

}  // namespace understudy
