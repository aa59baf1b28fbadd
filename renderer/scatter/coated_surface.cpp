#include "scatter/coated_surface.h"

#include <cassert>

#include "scatter/fresnel.h"
#include "scatter/table_store.h"

namespace understudy {
namespace {

float coat_share(const CoatedSurface& surface, float coat) {
    const float share = coat / (coat + (1.0F - coat) * surface.mean_albedo());
    return wants_mis(surface) ? std::max(share, kLeastSharpCoatShare) : share;
}

DirectionalAlbedo coat_of(float index, float alpha) {
    static TableStore store;
    return store.of({index, alpha}, [&] {
        return DirectionalAlbedo::of_gloss(alpha, [index](float c) { return dielectric_fresnel(c, index); });
    });
}

}  // namespace

CoatedSurface::CoatedSurface(const Spectrum& albedo, float index, float alpha)
    : albedo_(albedo),
      index_(index),
      alpha_(alpha),
      mean_albedo_(mean_over_waves(albedo)),
      coat_(coat_of(index, alpha)) {
    assert(index > 1.0F && alpha >= kLeastAlpha && alpha <= 1.0F);
}

CoatedSurface CoatedSurface::with_albedo(const Spectrum& albedo) const {
    CoatedSurface result = *this;
    result.albedo_ = albedo;
    result.mean_albedo_ = mean_over_waves(albedo);
    return result;
}

ScatterValue scatter_value(const CoatedSurface& surface, const Approach& from, const Vec3& wi) {
    const Vec3& wo = from.wo;
    if (!above_horizon(wo) || !above_horizon(wi)) return {};
    const float alpha = surface.alpha();
    const DirectionalAlbedo& coat = surface.coat();
    const Vec3 h = glm::normalize(wo + wi);
    const float coat_o = from.reflected;
    const float fresnel = dielectric_fresnel(std::min(1.0F, glm::dot(wo, h)), surface.index());
    const float distribution = ggx_distribution(h, alpha);
    const float gloss = fresnel * distribution * smith_visibility(wo.z, wi.z, alpha);
    const float through = (1.0F - coat_o) * (1.0F - coat.at(wi.z)) / (kPi * (1.0F - coat.mean()));
    const float share = coat_share(surface, coat_o);
    const float gloss_density = distribution / (2.0F * (wo.z + smith_root(wo.z, alpha)));
    return {gloss + through * from.colour, share * gloss_density + (1.0F - share) * wi.z / kPi};
}

std::optional<ScatterSample> sample_scatter(const CoatedSurface& surface, const Approach& from, const Vec3& u) {
    const Vec3& wo = from.wo;
    if (!above_horizon(wo)) return std::nullopt;
    const float share = coat_share(surface, from.reflected);
    const Vec3 wi =
        u.x < share ? mirror(wo, sample_visible_normal(wo, surface.alpha(), u.y, u.z)) : sample_cosine(u.y, u.z);
    if (!above_horizon(wi)) return std::nullopt;
    const ScatterValue both = scatter_value(surface, from, wi);
    return ScatterSample{wi, both.value * (wi.z / both.density), both.density, false};
}

}  // namespace understudy
