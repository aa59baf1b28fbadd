// A rough metal: the silver or gold lining of a reflector or an umbrella.
//
// GGX facets with Schlick's Fresnel term on a spectral reflectance, and the light that strikes more than one facet
// given back: Kulla and Conty, "Revisiting Physically Based Shading at Imageworks", SIGGRAPH 2017 course. The repeated
// reflections have the mean colour F² E / (1 − F (1 − E)), two facets at least: S. Hill, "A Multi-Faceted Exploration",
// 2018.
#pragma once

#include <optional>

#include "scatter/directional_albedo.h"
#include "scatter/scatter_sample.h"

namespace understudy {

class RoughMetal {
  public:
    // reflectance at normal incidence; alpha, its roughness, in [kLeastAlpha, 1]. Tabulates: not for the path loop.
    RoughMetal(const Spectrum& reflectance, float alpha);

    const Spectrum& reflectance() const { return reflectance_; }
    float alpha() const { return alpha_; }
    // Of the facets, were they perfect mirrors.
    const DirectionalAlbedo& facets() const { return facets_; }

  private:
    Spectrum reflectance_;
    float alpha_;
    DirectionalAlbedo facets_;
};

inline Approach approach(const RoughMetal& surface, const Vec3& wo, const Waves& waves) {
    return {wo, at(surface.reflectance(), waves), surface.facets().at(std::max(wo.z, 0.0F))};
}

ScatterValue scatter_value(const RoughMetal& surface, const Approach& from, const Vec3& wi);

// u.x chooses between the first reflection and the repeated ones, u.y and u.z the direction.
std::optional<ScatterSample> sample_scatter(const RoughMetal& surface, const Approach& from, const Vec3& u);

// Of light that comes evenly from everywhere, the Fresnel term taken at its mean.
Light4 albedo(const RoughMetal& surface, const Waves& waves);

inline bool wants_mis(const RoughMetal& surface) { return surface.alpha() < kBroadAlpha; }

// Reflectances at normal incidence.
Spectrum silver_reflectance();
Spectrum gold_reflectance();

}  // namespace understudy
