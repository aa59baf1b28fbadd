// How much of the light from one direction a reflecting lobe sends back in all, tabulated over that direction's cosine.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>

#include "base/geometry.h"
#include "scatter/microfacet.h"

namespace understudy {

class DirectionalAlbedo {
  public:
    // Fresnel: from the cosine between direction and facet to the share reflected.
    template <class Fresnel>
    static DirectionalAlbedo of_gloss(float alpha, const Fresnel& fresnel) {
        DirectionalAlbedo result;
        for (std::size_t i = 0; i < kCount; ++i) {
            const float cosine = static_cast<float>(i) / static_cast<float>(kCount - 1);
            result.values_[i] = integrate_gloss(cosine, alpha, fresnel);
        }
        result.mean_ = result.cosine_weighted_mean();
        return result;
    }

    // cosine in [0, 1].
    float at(float cosine) const {
        const float place = cosine * static_cast<float>(kCount - 1);
        const std::size_t index = std::min(static_cast<std::size_t>(place), kCount - 2);
        const float share = place - static_cast<float>(index);
        return values_[index] + share * (values_[index + 1] - values_[index]);
    }

    // 2 ∫ E(μ) μ dμ: of light that comes evenly from everywhere; exact for the interpolated table.
    float mean() const { return mean_; }

  private:
    static constexpr std::size_t kCount = 128;

    // The midpoint rule in the unit square that the visible normals are drawn from; one half of it mirrors the other.
    template <class Fresnel>
    static float integrate_gloss(float cos_o, float alpha, const Fresnel& fresnel) {
        constexpr int kRadii = 48;
        constexpr int kAngles = 48;
        const Vec3 wo(std::sqrt(std::max(0.0F, 1.0F - cos_o * cos_o)), 0.0F, cos_o);
        double sum = 0.0;
        for (int i = 0; i < kRadii; ++i) {
            for (int j = 0; j < kAngles; ++j) {
                const float u = (static_cast<float>(i) + 0.5F) / static_cast<float>(kRadii);
                const float v = (static_cast<float>(j) + 0.5F) / static_cast<float>(2 * kAngles) - 0.25F;
                const Vec3 h = sample_visible_normal(wo, alpha, u, v);
                const Vec3 wi = mirror(wo, h);
                if (wi.z <= 0.0F) continue;
                sum += static_cast<double>(fresnel(std::min(1.0F, glm::dot(wo, h))) * gloss_weight(cos_o, wi.z, alpha));
            }
        }
        return static_cast<float>(sum / (kRadii * kAngles));
    }

    float cosine_weighted_mean() const {
        const double step = 1.0 / static_cast<double>(kCount - 1);
        double sum = 0.0;
        for (std::size_t i = 0; i + 1 < kCount; ++i) {
            const double a = step * static_cast<double>(i);
            const double b = a + step;
            sum +=
                static_cast<double>(values_[i]) * (2.0 * a + b) + static_cast<double>(values_[i + 1]) * (a + 2.0 * b);
        }
        return static_cast<float>(sum * step / 3.0);
    }

    std::array<float, kCount> values_{};
    float mean_ = 0.0F;
};

}  // namespace understudy
