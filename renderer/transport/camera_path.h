// The beginnings of pixels' paths: the same for the picture and for whoever takes the pixel apart.
#pragma once

#include <algorithm>
#include <cmath>
#include <span>
#include <vector>

#include "spectrum/waves.h"
#include "stage/camera.h"
#include "transport/dimensions.h"
#include "transport/path_tracer.h"

namespace understudy {

// An offset with the density of a tent over two pixels: the pixel filter, sampled instead of splatted.
inline float tent_offset(float u) { return u < 0.5F ? std::sqrt(2.0F * u) - 1.0F : 1.0F - std::sqrt(2.0F - 2.0F * u); }

// One path of a pixel.
struct PixelSample {
    int x = 0, y = 0;  // from the top left
    int sample = 0;
};

// width: of the picture, in pixels.
inline std::vector<Path> camera_paths(const Camera& camera, unsigned seed, int width,
                                      std::span<const PixelSample> samples) {
    std::vector<Path> paths;
    paths.reserve(samples.size());
    for (std::size_t first = 0; first < samples.size(); first += kLanes) {
        const auto lanes = samples.subspan(first, std::min(kLanes, samples.size() - first));
        WideSampler wide;
        for (std::size_t i = 0; i < lanes.size(); ++i) {
            const Sampler sampler(seed, static_cast<std::uint32_t>(lanes[i].y * width + lanes[i].x),
                                  static_cast<std::uint32_t>(lanes[i].sample));
            wide.set(i, sampler, 0);
            paths.push_back({sampler});
        }
        const auto film_and_lens = wide.numbers(kFilmAndLens);
        const Wide wave = wide.numbers(kWave)[0];
        for (std::size_t i = 0; i < lanes.size(); ++i) {
            const Vec2 place(static_cast<float>(lanes[i].x) + 0.5F + tent_offset(film_and_lens[0][i]),
                             static_cast<float>(lanes[i].y) + 0.5F + tent_offset(film_and_lens[1][i]));
            paths[first + i].waves = sample_waves(wave[i]);
            paths[first + i].ray = camera.ray(place, {film_and_lens[2][i], film_and_lens[3][i]});
        }
    }
    return paths;
}

}  // namespace understudy
