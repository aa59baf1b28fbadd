// How the cloth of an umbrella or a frame sends on the light of one direction: matt, and in a lobe round the mirror
// direction or, through the cloth, round the way straight on.
//
// Both lobes are GGX facets (scatter/microfacet.h); through the cloth the direction is mirrored at it first, so the
// lobe stays reciprocal and no more than its share (the thin rough sheet of Walter and others, "Microfacet Models for
// Refraction through Rough Surfaces", EGSR 2007, taken as one interface). The figures are common practice, no source:
// a white canopy with a black back sends on four fifths, a silver one a little more; a shoot-through lets half of its
// light through and throws a third back.
#pragma once

#include "scatter/microfacet.h"

namespace understudy {

struct LitCloth {
    struct Side {
        float matt = 0.0F;  // reflectance, or transmittance
        float lobe = 0.0F;
        float alpha = 0.4F;  // the lobe's roughness
        float all() const { return matt + lobe; }
    };
    Side back;     // to the side that the light comes from
    Side through;  // to the other

    static constexpr LitCloth white() { return {{0.76F, 0.04F, 0.35F}, {}}; }
    static constexpr LitCloth silver() { return {{0.05F, 0.80F, 0.30F}, {}}; }
    static constexpr LitCloth shoot_through() { return {{0.35F, 0.0F, 0.4F}, {0.40F, 0.12F, 0.45F}}; }
    // A frame's: a third of what comes through keeps near its way.
    static constexpr LitCloth frame(float transmission) {
        return {{0.9F * (1.0F - transmission), 0.0F, 0.4F},
                {transmission * (2.0F / 3.0F), transmission * (1.0F / 3.0F), 0.45F}};
    }
};

// Of a lobe, per unit solid angle, without the cosine. normal on the side of both directions.
inline float lobe_value(const LitCloth::Side& side, const Vec3& normal, const Vec3& wi, const Vec3& wo) {
    const float cos_i = glm::dot(wi, normal);
    const float cos_o = glm::dot(wo, normal);
    if (!(cos_i > kHorizon && cos_o > kHorizon)) return 0.0F;
    const Vec3 h = glm::normalize(wi + wo);
    const float cosine = std::min(1.0F, glm::dot(h, normal));
    const float sine = std::sqrt(std::max(0.0F, 1.0F - cosine * cosine));
    return side.lobe * ggx_distribution({sine, 0.0F, cosine}, side.alpha) * smith_visibility(cos_o, cos_i, side.alpha);
}

}  // namespace understudy
