#include "meter/picture_tone.h"

#include "film/develop.h"
#include "film/exposure.h"
#include "meter/integrate.h"
#include "meter/light_colours.h"
#include "meter/ratio.h"

namespace understudy {

namespace {

constexpr double kBlack = 0.01 * kMidGrey;

Spectrum white_of(const WhiteBalance& balance, const LitStudio& lit, const std::vector<Reading>& readings) {
    if (!balance.as_lit) return white_spectrum(balance.kelvin, balance.illuminant);
    const Reading* face = find_reading(readings, "face", Receptor::kDome, Facing::kCamera);
    Spectrum white(0.0F);
    for (std::size_t i = 0; i < lit.layers.size(); ++i) {
        white += lit.layers[i].spectrum * static_cast<float>(face->by_light[i].exposure_lxs);
    }
    return white;
}

// A film of one pixel, developed as the picture is.
Vec3 developed(const Gathered& seen, const Setup& setup, const LitStudio& lit, const Spectrum& white) {
    Film film;
    film.width = 1;
    film.height = 1;
    for (std::size_t i = 0; i < lit.layers.size(); ++i) {
        film.layers.push_back({lit.layers[i].light, {seen.transfers[i]}});
    }
    const ExposureSettings& exposure = setup.camera.exposure;
    return develop(film, {lit.layers, exposure.aperture, exposure.iso, white, setup.picture.treatment}).pixels.front();
}

}  // namespace

double luminance_of(const Vec3& linear) {
    return 0.2126 * static_cast<double>(linear.x) + 0.7152 * static_cast<double>(linear.y) +
           0.0722 * static_cast<double>(linear.z);
}

PictureTone::PictureTone(const Setup& setup, const LitStudio& lit, const std::vector<Reading>& readings)
    : setup_(setup), lit_(lit), white_(white_of(setup.picture.white_balance, lit, readings)) {}

Vec3 PictureTone::along(const Stage& stage, const Ray& ray, double relative) const {
    const ExposureSettings& exposure = setup_.camera.exposure;
    const double linear_black = kBlack / linear_per_exposure(exposure.aperture, exposure.iso);
    const Gathered seen =
        look_for_light(stage, ray, exposure_weights(lit_.layers), {relative, relative * linear_black});
    return developed(seen, setup_, lit_, white_);
}

}  // namespace understudy
