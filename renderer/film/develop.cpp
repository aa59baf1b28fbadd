#include "film/develop.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <utility>

#include <tbb/blocked_range.h>
#include <tbb/parallel_for.h>

#include "film/exposure.h"
#include "film/panchromatic.h"
#include "spectrum/band_weights.h"
#include "spectrum/colour.h"
#include "spectrum/observer.h"

namespace understudy {
namespace {

// What a unit of transfer in each band adds to a pixel.
using BandColours = std::array<Vec3, kBandCount>;

// For a light normalised to one lumen, in linear light before exposure.
BandColours colour_response(const Spectrum& light, const Spectrum& white) {
    const glm::dmat3 to_rgb = linear_srgb_of_xyz_matrix() * adaptation_to_d65(xyz_of(white));
    const Bands x = band_weights(light * observer_x());
    const Bands y = band_weights(light * observer_y());
    const Bands z = band_weights(light * observer_z());
    BandColours response;
    for (std::size_t band = 0; band < kBandCount; ++band) {
        response[band] = Vec3(to_rgb * Double3(x[band], y[band], z[band]));
    }
    return response;
}

// Scaled so that the white comes out as bright as in colour.
BandColours panchromatic(const Spectrum& light, const Spectrum& white) {
    const double of_white = integral(normalised_to_luminance(white) * panchromatic_response());
    const Bands exposed = band_weights(light * panchromatic_response());
    BandColours response;
    for (std::size_t band = 0; band < kBandCount; ++band) {
        response[band] = Vec3(static_cast<float>(static_cast<double>(exposed[band]) / of_white));
    }
    return response;
}

double gain_of(const LayerLight& light, const Developing& developing) {
    return light.exposure_power * linear_per_exposure(developing.aperture, developing.iso);
}

BandColours layer_response(const LayerLight& light, const Developing& developing) {
    const Spectrum spectrum = normalised_to_luminance(light.spectrum);
    BandColours response = developing.treatment == Treatment::kColour ? colour_response(spectrum, developing.white)
                                                                      : panchromatic(spectrum, developing.white);
    const auto gain = static_cast<float>(gain_of(light, developing));
    for (Vec3& colour : response) colour *= gain;
    return response;
}

Picture add_layer(Picture picture, const std::vector<Bands>& pixels, const BandColours& response) {
    assert(pixels.size() == picture.pixels.size());
    constexpr std::size_t kTogether = 8192;
    tbb::parallel_for(tbb::blocked_range<std::size_t>(0, pixels.size(), kTogether), [&](const auto& some) {
        for (std::size_t i = some.begin(); i < some.end(); ++i) {
            Vec3 sum(0.0F);
            for (std::size_t band = 0; band < kBandCount; ++band) sum += pixels[i][band] * response[band];
            picture.pixels[i] += sum;
        }
    });
    return picture;
}

Picture blank_picture(const Film& film) {
    return {film.width, film.height, std::vector<Vec3>(film.pixel_count(), Vec3(0.0F))};
}

}  // namespace

Picture develop(const Film& film, const Developing& developing) {
    assert(developing.lights.size() == film.layers.size());
    Picture picture = blank_picture(film);
    for (std::size_t layer = 0; layer < film.layers.size(); ++layer) {
        const BandColours response = layer_response(developing.lights[layer], developing);
        picture = add_layer(std::move(picture), film.layers[layer].pixels, response);
    }
    return picture;
}

Picture develop_layer(const Film& film, const Developing& developing, std::size_t layer) {
    assert(layer < film.layers.size() && developing.lights.size() == film.layers.size());
    const BandColours response = layer_response(developing.lights[layer], developing);
    return add_layer(blank_picture(film), film.layers[layer].pixels, response);
}

Picture develop_glints(const Film& film, const Developing& developing) {
    assert(developing.lights.size() == film.layers.size());
    Picture picture = blank_picture(film);
    for (std::size_t layer = 0; layer < film.layers.size(); ++layer) {
        const std::vector<float>& glints = film.layers[layer].glints;
        if (glints.empty()) continue;
        Vec3 response(0.0F);
        for (const Vec3& band : layer_response(developing.lights[layer], developing)) response += band;
        for (std::size_t i = 0; i < glints.size(); ++i) picture.pixels[i] += glints[i] * response;
    }
    return picture;
}

std::vector<double> layer_gains(const Developing& developing) {
    std::vector<double> gains;
    for (const LayerLight& light : developing.lights) gains.push_back(gain_of(light, developing));
    return gains;
}

Picture develop_albedo(const Film& film, const Developing& developing) {
    const BandColours response = colour_response(normalised_to_luminance(developing.white), developing.white);
    return add_layer(blank_picture(film), film.features.albedo, response);
}

std::size_t count_non_finite(const Picture& picture) {
    std::size_t count = 0;
    for (const Vec3& pixel : picture.pixels) {
        for (int channel = 0; channel < 3; ++channel) count += std::isfinite(pixel[channel]) ? 0 : 1;
    }
    return count;
}

double clipped_share(const Picture& picture) {
    if (picture.pixels.empty()) return 0.0;
    const auto clipped = std::count_if(picture.pixels.begin(), picture.pixels.end(), [](const Vec3& pixel) {
        return pixel.x > 1.0F || pixel.y > 1.0F || pixel.z > 1.0F;
    });
    return static_cast<double>(clipped) / static_cast<double>(picture.pixels.size());
}

}  // namespace understudy
