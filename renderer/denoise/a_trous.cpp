#include "denoise/a_trous.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <tbb/parallel_for.h>

namespace understudy {

namespace {

constexpr int kLevels = 5;
// B-spline of the third degree.
constexpr std::array<float, 5> kKernel{1.0F / 16.0F, 1.0F / 4.0F, 3.0F / 8.0F, 1.0F / 4.0F, 1.0F / 16.0F};
// How unlike two pixels may be. By eye, no source.
constexpr float kNormalPower = 32.0F;
constexpr float kDepthShare = 0.01F;  // of the distance, a pixel's step
constexpr float kAlbedoApart = 0.1F;
constexpr float kLightApart = 1.5F;  // of the noise to be expected
constexpr float kDimmest = 0.02F;    // of a white card: darker places are taken for as noisy as this

constexpr float kDarkest = 1e-3F;  // of albedo: what is black gives no light to divide

class Filter {
  public:
    Filter(const Picture& picture, const Features& features, int samples)
        : width_(picture.width), height_(picture.height), features_(features) {
        // Relative spread of one path's light at a pixel, about 1 under an area light; it shrinks by the root of their
        // number and is coded by the light's own root, so that dark places are not smeared.
        apart_ = kLightApart / std::sqrt(static_cast<float>(std::max(samples, 1)));
        light_.reserve(picture.pixels.size());
        for (std::size_t i = 0; i < picture.pixels.size(); ++i) light_.push_back(picture.pixels[i] / divisor(i));
    }

    void pass(int level) {
        const int step = 1 << level;
        const float apart = apart_ / static_cast<float>(step);
        look_round();
        std::vector<Vec3> smoother(light_.size());
        tbb::parallel_for(0, height_, [&](int y) {
            for (int x = 0; x < width_; ++x) {
                const auto at = static_cast<std::size_t>(y * width_ + x);
                smoother[at] = is_number(light_[at]) ? mean_round(x, y, step, apart) : light_[at];
            }
        });
        light_ = std::move(smoother);
    }

    Picture picture() const {
        Picture result{width_, height_, light_};
        for (std::size_t i = 0; i < light_.size(); ++i) result.pixels[i] *= divisor(i);
        return result;
    }

  private:
    Vec3 divisor(std::size_t i) const {
        return features_.depth_m[i] > 0.0F ? glm::max(features_.albedo.pixels[i], Vec3(kDarkest)) : Vec3(1.0F);
    }

    // How bright each place is, by itself and its neighbours: one pixel's noise would keep it apart from all others.
    void look_round() {
        guide_.assign(light_.size(), 0.0F);
        tbb::parallel_for(0, height_, [&](int y) {
            for (int x = 0; x < width_; ++x) guide_[static_cast<std::size_t>(y * width_ + x)] = brightness_round(x, y);
        });
    }

    float brightness_round(int x, int y) const {
        float sum = 0.0F;
        float count = 0.0F;
        for (int k = 0; k < 9; ++k) {
            const int column = x + k % 3 - 1;
            const int row = y + k / 3 - 1;
            if (column < 0 || row < 0 || column >= width_ || row >= height_) continue;
            const Vec3& light = light_[static_cast<std::size_t>(row * width_ + column)];
            if (!is_number(light)) continue;
            sum += std::max(0.0F, brightness(light));
            count += 1.0F;
        }
        return sum / std::max(count, 1.0F);
    }

    Vec3 mean_round(int x, int y, int step, float apart) const {
        const auto here = static_cast<std::size_t>(y * width_ + x);
        Vec3 sum(0.0F);
        float weights = 0.0F;
        for (int v = -2; v <= 2; ++v) {
            const int row = y + v * step;
            if (row < 0 || row >= height_) continue;
            for (int u = -2; u <= 2; ++u) {
                const int column = x + u * step;
                if (column < 0 || column >= width_) continue;
                const auto there = static_cast<std::size_t>(row * width_ + column);
                if (!is_number(light_[there])) continue;
                const float weight = kKernel.at(static_cast<std::size_t>(u + 2)) *
                                     kKernel.at(static_cast<std::size_t>(v + 2)) *
                                     alike(here, there, static_cast<float>(step), apart);
                sum += weight * light_[there];
                weights += weight;
            }
        }
        return sum / weights;
    }

    float alike(std::size_t a, std::size_t b, float step, float apart) const {
        if (a == b) return 1.0F;
        const float far = features_.depth_m[a];
        if ((far > 0.0F) != (features_.depth_m[b] > 0.0F)) return 0.0F;
        const Vec3& na = features_.normals[a];
        const Vec3& nb = features_.normals[b];
        const float turned = std::pow(std::max(0.0F, glm::dot(na, nb)), kNormalPower);
        const float deep = std::abs(far - features_.depth_m[b]) / (kDepthShare * step * std::max(far, 1e-3F));
        const Vec3 dyed = features_.albedo.pixels[a] - features_.albedo.pixels[b];
        const float light = std::sqrt(guide_[a]) - std::sqrt(guide_[b]);
        // As far apart as noise may bring two places that are as bright as these are between them.
        const float between = std::sqrt(std::max(kDimmest, guide_[a]) * std::max(kDimmest, guide_[b]));
        const float noise = apart * std::sqrt(between);
        return (far > 0.0F ? turned : 1.0F) *
               std::exp(-deep - glm::dot(dyed, dyed) / (kAlbedoApart * kAlbedoApart) - light * light / (noise * noise));
    }

    int width_;
    int height_;
    const Features& features_;
    float apart_ = 1.0F;
    std::vector<Vec3> light_;   // over albedo
    std::vector<float> guide_;  // its brightness, with the neighbours'
};

}  // namespace

Picture denoise_a_trous(const Picture& picture, const Features& features, int samples) {
    Filter filter(picture, features, samples);
    for (int level = 0; level < kLevels; ++level) filter.pass(level);
    return filter.picture();
}

}  // namespace understudy
