// Developing: from a film and the settings that need no new tracing to a picture in linear light.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "setup/setup.h"
#include "spectrum/spectrum.h"
#include "transport/film.h"

namespace understudy {

// How a layer's light is set when the film is developed.
struct LayerLight {
    std::string light;
    double exposure_power =
        0.0;            // lm·s while the shutter is open: a flash's energy, or lumens × shutter; ambient: lx·s
    Spectrum spectrum;  // any scale
};

struct Developing {
    std::vector<LayerLight> lights;  // one a layer of the film, in its order
    double aperture = 4.0;
    double iso = 100.0;
    Spectrum white;  // what is to come out neutral
    Treatment treatment = Treatment::kColour;
};

// Linear light, BT.709 primaries, 1.0 = a matt white card in the metered light.
struct Picture {
    int width = 0;
    int height = 0;
    std::vector<Vec3> pixels;
};

// Linear = π · L · S / (C · N²) with L the luminous exposure a steradian and square metre that reaches the film
// (lx·s/sr) and C = 250 lx·s: the incident equation of ISO 2720, so that reflectance 1 at the metered aperture is 1.0.
Picture develop(const Film& film, const Developing& developing);

// One light's share of the picture, the others off; the shares add up to develop()'s picture.
Picture develop_layer(const Film& film, const Developing& developing, std::size_t layer);

// What corneas and lenses mirror of the lights themselves (FilmLayer::glints); black when the film does not tell.
Picture develop_glints(const Film& film, const Developing& developing);

// How bright a unit of each layer's transfer is in the picture, in linear light.
std::vector<double> layer_gains(const Developing& developing);

// The film's albedo feature in linear light under the developing's white: reflectance 1 comes out as 1.
Picture develop_albedo(const Film& film, const Developing& developing);

// Channels of all pixels that are infinite or not a number; developing hands them on, so that they can be seen.
std::size_t count_non_finite(const Picture& picture);

// The share of pixels with a channel over 1, which is what an 8-bit file cuts off; 0 for an empty picture.
double clipped_share(const Picture& picture);

}  // namespace understudy
