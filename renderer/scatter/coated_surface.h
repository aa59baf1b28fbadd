// A matt surface under a rough clear coat: skin under its oil, the white of the eye under its tears.
//
// The two add up to what came in. With E the coat's directional albedo and ρ the colour below,
//   f = f_coat + ρ (1 − E(μo)) (1 − E(μi)) / (π (1 − E_mean))
// is reciprocal and returns exactly E + ρ (1 − E): Kelemen and Szirmay-Kalos, "A Microfacet Based Coupled
// Specular-Matte BRDF Model with Importance Sampling", Eurographics 2001.
#pragma once

#include <optional>

#include "scatter/directional_albedo.h"
#include "scatter/scatter_sample.h"

namespace understudy {

class CoatedSurface {
  public:
    // index > 1 of the coat; alpha, its roughness, in [kLeastAlpha, 1]. Tabulates: not for the path loop.
    CoatedSurface(const Spectrum& albedo, float index, float alpha);

    // The same coat over another colour, without tabulating again.
    CoatedSurface with_albedo(const Spectrum& albedo) const;

    const Spectrum& base() const { return albedo_; }
    float index() const { return index_; }
    float alpha() const { return alpha_; }
    const DirectionalAlbedo& coat() const { return coat_; }
    float mean_albedo() const { return mean_albedo_; }

  private:
    Spectrum albedo_;
    float index_;
    float alpha_;
    float mean_albedo_;
    DirectionalAlbedo coat_;
};

inline Approach approach(const CoatedSurface& surface, const Vec3& wo, const Waves& waves) {
    return {wo, at(surface.base(), waves), surface.coat().at(std::max(wo.z, 0.0F))};
}

ScatterValue scatter_value(const CoatedSurface& surface, const Approach& from, const Vec3& wi);

// u.x chooses between coat and base, u.y and u.z the direction.
std::optional<ScatterSample> sample_scatter(const CoatedSurface& surface, const Approach& from, const Vec3& u);

// Of light that comes evenly from everywhere.
inline Light4 albedo(const CoatedSurface& surface, const Waves& waves) {
    const float coat = surface.coat().mean();
    return coat + (1.0F - coat) * at(surface.base(), waves);
}

inline bool wants_mis(const CoatedSurface& surface) { return surface.alpha() < kBroadAlpha; }

}  // namespace understudy
