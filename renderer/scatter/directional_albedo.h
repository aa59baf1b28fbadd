// How much of the light from one direction a reflecting lobe sends back in all, tabulated over that direction's cosine.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>

#include "base/geometry.h"
#include "scatter/microfacet.h"

namespace understudy {

// Even steps of the cosine's root, linear between: near grazing the albedo changes within a cosine of alpha. Count
// steps, each summed over Side × Side points.
template <std::size_t Count, int Side>
class AlbedoTable {
  public:
    // Fresnel: from the cosine between direction and facet to the share reflected.
    template <class Fresnel>
    static AlbedoTable of_gloss(float alpha, const Fresnel& fresnel) {
        AlbedoTable result;
        for (std::size_t i = 0; i < kCount; ++i) {
            const float root = static_cast<float>(i) / static_cast<float>(kCount - 1);
            result.values_[i] = integrate_gloss(root * root, alpha, fresnel);
        }
        result.mean_ = result.cosine_weighted_mean();
        return result;
    }

    // Of a broad lobe: from wo and wi to its value, 1/sr, without the cosine; finite times the cosine of wi.
    template <class Lobe>
    static AlbedoTable of_lobe(const Lobe& lobe) {
        AlbedoTable result;
        for (std::size_t i = 0; i < kCount; ++i) {
            const float root = static_cast<float>(i) / static_cast<float>(kCount - 1);
            result.values_[i] = integrate_lobe(std::max(root * root, 1e-6F), lobe);
        }
        result.mean_ = result.cosine_weighted_mean();
        return result;
    }

    // cosine in [0, 1].
    float at(float cosine) const {
        const float place = std::sqrt(cosine) * static_cast<float>(kCount - 1);
        const std::size_t index = std::min(static_cast<std::size_t>(place), kCount - 2);
        const float share = place - static_cast<float>(index);
        return values_[index] + share * (values_[index + 1] - values_[index]);
    }

    // 2 ∫ E(μ) μ dμ: of light that comes evenly from everywhere; exact for the interpolated table.
    float mean() const { return mean_; }

  private:
    static constexpr std::size_t kCount = Count;

    // The midpoint rule in the unit square that the visible normals are drawn from; one half of it mirrors the other.
    // The distribution's long tail and the horizon's edge lie near u = 1: the warp u = 1 − (1 − s)³ spends most points
    // there.
    template <class Fresnel>
    static float integrate_gloss(float cos_o, float alpha, const Fresnel& fresnel) {
        constexpr int kRadii = Side;
        constexpr int kAngles = Side;
        const Vec3 wo(std::sqrt(std::max(0.0F, 1.0F - cos_o * cos_o)), 0.0F, cos_o);
        double sum = 0.0;
        for (int i = 0; i < kRadii; ++i) {
            const float rest = 1.0F - (static_cast<float>(i) + 0.5F) / static_cast<float>(kRadii);
            const float u = 1.0F - rest * rest * rest;
            float ring = 0.0F;
            for (int j = 0; j < kAngles; ++j) {
                const float v = (static_cast<float>(j) + 0.5F) / static_cast<float>(2 * kAngles) - 0.25F;
                const Vec3 h = sample_visible_normal(wo, alpha, u, v);
                const Vec3 wi = mirror(wo, h);
                if (wi.z <= 0.0F) continue;
                ring += fresnel(std::min(1.0F, glm::dot(wo, h))) * gloss_weight(cos_o, wi.z, alpha);
            }
            sum += static_cast<double>(3.0F * rest * rest * ring);
        }
        // The weights of the warp add up to this and not quite to 1.
        constexpr double kWarp = 1.0 - 0.25 / (static_cast<double>(kRadii) * kRadii);
        return static_cast<float>(sum / (kRadii * kAngles * kWarp));
    }

    // The midpoint rule over azimuth and the cosine's root, which crowds points toward the horizon.
    template <class Lobe>
    static float integrate_lobe(float cos_o, const Lobe& lobe) {
        constexpr int kRoots = 96;
        constexpr int kAngles = 48;
        const Vec3 wo(std::sqrt(std::max(0.0F, 1.0F - cos_o * cos_o)), 0.0F, cos_o);
        double sum = 0.0;
        for (int i = 0; i < kRoots; ++i) {
            const float root = (static_cast<float>(i) + 0.5F) / static_cast<float>(kRoots);
            const float cosine = root * root;
            const float sine = std::sqrt(std::max(0.0F, 1.0F - cosine * cosine));
            float ring = 0.0F;
            for (int j = 0; j < kAngles; ++j) {
                const float angle = kPi * (static_cast<float>(j) + 0.5F) / static_cast<float>(kAngles);
                ring += lobe(wo, Vec3(sine * std::cos(angle), sine * std::sin(angle), cosine));
            }
            sum += static_cast<double>(ring * cosine * 2.0F * root);
        }
        return static_cast<float>(sum * 2.0 * kPiDouble / (kRoots * kAngles));
    }

    // With μ = s²: 4 ∫ E(s) s³ ds, by Gauss's rule of three points, exact for the fourth-degree integrand.
    float cosine_weighted_mean() const {
        constexpr std::array<double, 3> kPlaces = {0.1127016653792583, 0.5, 0.8872983346207417};
        constexpr std::array<double, 3> kWeights = {5.0 / 18.0, 8.0 / 18.0, 5.0 / 18.0};
        const double step = 1.0 / static_cast<double>(kCount - 1);
        double sum = 0.0;
        for (std::size_t i = 0; i + 1 < kCount; ++i) {
            const auto a = static_cast<double>(values_[i]);
            const auto b = static_cast<double>(values_[i + 1]);
            for (std::size_t k = 0; k < kPlaces.size(); ++k) {
                const double root = step * (static_cast<double>(i) + kPlaces[k]);
                sum += kWeights[k] * (a + kPlaces[k] * (b - a)) * root * root * root;
            }
        }
        return static_cast<float>(4.0 * step * sum);
    }

    std::array<float, kCount> values_{};
    float mean_ = 0.0F;
};

using DirectionalAlbedo = AlbedoTable<128, 64>;

}  // namespace understudy
