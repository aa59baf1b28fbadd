#include "scatter/rough_metal.h"

#include <cassert>

#include "scatter/fresnel.h"
#include "scatter/table_store.h"

namespace understudy {
namespace {

// The cosine-weighted mean of Schlick's term: 2 ∫ (F0 + (1 − F0) (1 − μ)⁵) μ dμ.
Light4 mean_fresnel(const Light4& normal) { return normal + (1.0F - normal) / 21.0F; }

Light4 repeated_colour(const Light4& normal, float facets_mean) {
    const Light4 fresnel = mean_fresnel(normal);
    return fresnel * fresnel * facets_mean / (1.0F - fresnel * (1.0F - facets_mean));
}

// Smoother than this the facets return everything at once, and the quotient of two vanishing numbers is noise.
constexpr float kLeastLoss = 1e-6F;

DirectionalAlbedo facets_of(float alpha) {
    static TableStore store;
    return store.of({alpha, 0.0F}, [&] { return DirectionalAlbedo::of_gloss(alpha, [](float) { return 1.0F; }); });
}

}  // namespace

RoughMetal::RoughMetal(const Spectrum& reflectance, float alpha)
    : reflectance_(reflectance), alpha_(alpha), facets_(facets_of(alpha)) {
    assert(alpha >= kLeastAlpha && alpha <= 1.0F);
}

ScatterValue scatter_value(const RoughMetal& surface, const Approach& from, const Vec3& wi) {
    const Vec3& wo = from.wo;
    if (!above_horizon(wo) || !above_horizon(wi)) return {};
    const float alpha = surface.alpha();
    const DirectionalAlbedo& facets = surface.facets();
    const Vec3 h = glm::normalize(wo + wi);
    const Light4& normal = from.colour;
    const Light4 fresnel = normal + (1.0F - normal) * schlick_weight(std::min(1.0F, glm::dot(wo, h)));
    const float distribution = ggx_distribution(h, alpha);
    ScatterValue result;
    result.value = fresnel * (distribution * smith_visibility(wo.z, wi.z, alpha));
    const float once = from.reflected;
    const float loss = 1.0F - facets.mean();
    if (loss > kLeastLoss) {
        const float repeated = (1.0F - once) * (1.0F - facets.at(wi.z)) / (kPi * loss);
        result.value += repeated * repeated_colour(normal, facets.mean());
    }
    const float gloss_density = distribution / (2.0F * (wo.z + smith_root(wo.z, alpha)));
    result.density = once * gloss_density + (1.0F - once) * wi.z / kPi;
    return result;
}

std::optional<ScatterSample> sample_scatter(const RoughMetal& surface, const Approach& from, const Vec3& u) {
    const Vec3& wo = from.wo;
    if (!above_horizon(wo)) return std::nullopt;
    const bool once = u.x < from.reflected;
    const Vec3 wi = once ? mirror(wo, sample_visible_normal(wo, surface.alpha(), u.y, u.z)) : sample_cosine(u.y, u.z);
    if (!above_horizon(wi)) return std::nullopt;
    const ScatterValue both = scatter_value(surface, from, wi);
    return ScatterSample{wi, both.value * (wi.z / both.density), both.density, false};
}

Light4 albedo(const RoughMetal& surface, const Waves& waves) {
    const Light4 normal = at(surface.reflectance(), waves);
    const float facets = surface.facets().mean();
    return mean_fresnel(normal) * facets + repeated_colour(normal, facets) * (1.0F - facets);
}

}  // namespace understudy
