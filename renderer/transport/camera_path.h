// The beginning of one path of one pixel: the same for the picture and for whoever takes the pixel apart.
#pragma once

#include <cmath>

#include "spectrum/waves.h"
#include "stage/camera.h"
#include "transport/dimensions.h"
#include "transport/sampler.h"

namespace understudy {

struct CameraPath {
    Sampler sampler;
    Waves waves;
    Ray ray;
};

// An offset with the density of a tent over two pixels: the pixel filter, sampled instead of splatted.
inline float tent_offset(float u) { return u < 0.5F ? std::sqrt(2.0F * u) - 1.0F : 1.0F - std::sqrt(2.0F - 2.0F * u); }

// x, y: of the pixel, from the top left; width: of the picture, in pixels.
inline CameraPath camera_path(const Camera& camera, unsigned seed, int width, int x, int y, int sample) {
    const Sampler sampler(seed, static_cast<std::uint32_t>(y * width + x), static_cast<std::uint32_t>(sample));
    const Vec4 film_and_lens = sampler.group(kFilmAndLens);
    const Vec2 place(static_cast<float>(x) + 0.5F + tent_offset(film_and_lens.x),
                     static_cast<float>(y) + 0.5F + tent_offset(film_and_lens.y));
    return {sampler, sample_waves(sampler.group(kWave).x), camera.ray(place, {film_and_lens.z, film_and_lens.w})};
}

}  // namespace understudy
