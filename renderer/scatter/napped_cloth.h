// Cloth as it is worn: matt, with a nap of fibres that stand up and shine where light grazes them.
//
// The nap is the sheen of Estevez and Kulla, "Production Friendly Microfacet Sheen BRDF", SIGGRAPH 2017 course on
// physically based shading: D(θ) = (2 + 1/r) sin^(1/r) θ / 2π, with the smooth masking of Neubelt and Pettineo,
// "Crafting a Next-Gen Material Pipeline for The Order: 1886", SIGGRAPH 2013 course: 1 / (4 (μo + μi − μo μi)).
// Nap and dyed ground add up to what came in as in scatter/coated_surface.h (Kelemen and Szirmay-Kalos 2001).
#pragma once

#include <optional>

#include "scatter/directional_albedo.h"
#include "scatter/scatter_sample.h"

namespace understudy {

class NappedCloth {
  public:
    // nap: how much of the sheen there is, 0 … 1; spread: r of the distribution, 0.2 … 1, larger is softer. Tabulates:
    // not for the path loop.
    NappedCloth(const Spectrum& dye, float nap, float spread);

    const Spectrum& dye() const { return dye_; }
    const DirectionalAlbedo& sheen() const { return sheen_; }
    float nap() const { return nap_; }
    float spread() const { return spread_; }
    // Of the samples, those that look for the sheen.
    float sheen_share() const { return sheen_share_; }

  private:
    Spectrum dye_;
    float nap_;
    float spread_;
    float sheen_share_;
    DirectionalAlbedo sheen_;
};

inline Approach approach(const NappedCloth& cloth, const Vec3& wo, const Waves& waves) {
    return {wo, at(cloth.dye(), waves), cloth.sheen().at(std::max(wo.z, 0.0F))};
}

ScatterValue scatter_value(const NappedCloth& cloth, const Approach& from, const Vec3& wi);

// u.x chooses between sheen and ground, u.y and u.z the direction.
std::optional<ScatterSample> sample_scatter(const NappedCloth& cloth, const Approach& from, const Vec3& u);

// Of light that comes evenly from everywhere.
inline Light4 albedo(const NappedCloth& cloth, const Waves& waves) {
    const float sheen = cloth.sheen().mean();
    return sheen + (1.0F - sheen) * at(cloth.dye(), waves);
}

inline bool wants_mis(const NappedCloth&) { return false; }

}  // namespace understudy
