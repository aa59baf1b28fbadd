// Made-up pictures whose light is known, with and without noise.
#pragma once

#include <cmath>
#include <random>

#include "denoise/features.h"

namespace understudy {

struct Made {
    Picture truth;
    Picture noisy;
    Features features;
};

// Two boards side by side, albedo 0.8 and 0.2, under light that falls off from left to right. Noise: each pixel's light
// times a mean of so many exponentially spread numbers, which is what paths to a large light look like at their worst.
inline Made two_boards(int width, int height, int samples, unsigned seed) {
    Made made;
    made.truth = {width, height, {}};
    made.noisy = made.truth;
    made.features.albedo = made.truth;
    std::mt19937 random(seed);
    std::exponential_distribution<float> spread(1.0F);
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) {
            const float albedo = x < width / 2 ? 0.8F : 0.2F;
            const float light = 0.3F + 0.7F * static_cast<float>(x) / static_cast<float>(width);
            float noise = 0.0F;
            for (int s = 0; s < samples; ++s) noise += spread(random) / static_cast<float>(samples);
            made.truth.pixels.emplace_back(albedo * light);
            made.noisy.pixels.emplace_back(albedo * light * noise);
            made.features.albedo.pixels.emplace_back(albedo);
            made.features.normals.emplace_back(0.0F, 0.0F, 1.0F);
            made.features.depth_m.push_back(2.0F);
        }
    }
    return made;
}

// Root of the mean squared relative difference.
inline double apart(const Picture& picture, const Picture& truth) {
    double sum = 0.0;
    for (std::size_t i = 0; i < truth.pixels.size(); ++i) {
        const double difference =
            static_cast<double>(picture.pixels[i].y - truth.pixels[i].y) / static_cast<double>(truth.pixels[i].y);
        sum += difference * difference;
    }
    return std::sqrt(sum / static_cast<double>(truth.pixels.size()));
}

}  // namespace understudy
