#include "meter/iris_luminance.h"

#include <cmath>

#include "scatter/fresnel.h"

namespace understudy {

namespace {

constexpr double kMagnification = 1.13;  // of the iris by the cornea (Gullstrand's eye)
constexpr int kPlaces = 24;
constexpr int kWaveSets = 4;  // of four wavelengths: one in each band

double mean_reflectance(const Stage& stage, const Eye& eye, const std::vector<Bands>& weights) {
    const double out = 0.5 * (eye.pupil_radius_m + kIrisRadius);
    double sum = 0.0;
    double all = 0.0;
    for (int i = 0; i < kPlaces; ++i) {
        const double turn = 2.0 * kPiDouble * i / kPlaces;
        const Vec2 across(static_cast<float>(out * std::cos(turn)), static_cast<float>(out * std::sin(turn)));
        const auto patch = stage.iris().patch(across, static_cast<float>(eye.pupil_radius_m), 0);
        for (int k = 0; k < kWaveSets; ++k) {
            const Waves waves = sample_waves((static_cast<float>(k) + 0.5F) / kWaveSets);
            const Light4 colour = stage.iris().colour(patch, waves);
            for (std::size_t w = 0; w < kWaveCount; ++w) {
                double weight = 0.0;
                for (const Bands& bands : weights) weight += static_cast<double>(bands[waves.band[w]]);
                sum += weight * static_cast<double>(colour[static_cast<glm::length_t>(w)] * patch.share);
                all += weight;
            }
        }
    }
    return all > 0.0 ? sum / all : 0.0;
}

}  // namespace

double iris_luminance(const Stage& stage, const Eye& eye, const std::vector<Bands>& weights, double exposure_lxs) {
    const auto passed = 1.0 - static_cast<double>(dielectric_fresnel(1.0F, static_cast<float>(kCorneaIndex)));
    const double gathered = kMagnification / kCorneaIndex;
    return mean_reflectance(stage, eye, weights) * exposure_lxs / kPiDouble * passed * passed * gathered * gathered;
}

}  // namespace understudy
