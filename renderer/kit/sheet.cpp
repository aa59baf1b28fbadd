#include "kit/sheet.h"

#include "scatter/fresnel.h"
#include "scatter/microfacet.h"

namespace understudy {

namespace {

// Facets that mirror all of it, in a direction on wo's side.
float mirror_lobe(const Vec3& wo, const Vec3& wi, float alpha) {
    if (!above_horizon(wo) || !above_horizon(wi)) return 0.0F;
    return ggx_distribution(glm::normalize(wo + wi), alpha) * smith_visibility(wo.z, wi.z, alpha);
}

float schlick(float reflectance, float cosine) { return reflectance + (1.0F - reflectance) * schlick_weight(cosine); }

Vec3 through(const Vec3& w) { return {w.x, w.y, -w.z}; }

}  // namespace

Sheet Sheet::wall(const Lining& lining) {
    Sheet sheet;
    const auto reflectance = static_cast<float>(lining.reflectance);
    sheet.alpha_ = static_cast<float>(lining.roughness);
    (lining.metal ? sheet.gloss_back_ : sheet.even_back_) = reflectance;
    return sheet;
}

Sheet Sheet::cloth(const DiffusingCloth& cloth) {
    Sheet sheet;
    sheet.even_back_ = static_cast<float>(cloth.reflectance);
    sheet.even_through_ = static_cast<float>(cloth.transmittance * (1.0 - cloth.straight));
    sheet.gloss_through_ = static_cast<float>(cloth.transmittance * cloth.straight);
    sheet.alpha_ = static_cast<float>(cloth.roughness);
    return sheet;
}

float Sheet::gloss_through(const Vec3& wo, const Vec3& wi_through) const {
    return gloss_through_ > 0.0F ? gloss_through_ * mirror_lobe(wo, through(wi_through), alpha_) : 0.0F;
}

float Sheet::value(const Vec3& wo, const Vec3& wi) const {
    if (wi.z < 0.0F) return even_through_ / kPi + gloss_through(wo, wi);
    float sum = even_back_ / kPi;
    if (gloss_back_ > 0.0F) {
        const float cosine = glm::dot(wo, glm::normalize(wo + wi));
        sum += schlick(gloss_back_, cosine) * mirror_lobe(wo, wi, alpha_);
    }
    return sum;
}

float Sheet::density(const Vec3& wo, const Vec3& wi) const {
    if (!metal() || !above_horizon(wo) || !above_horizon(wi)) return 0.0F;
    return density_gloss(wo, glm::normalize(wo + wi), alpha_);
}

SheetSample Sheet::sample(const Vec3& wo, float u, float v, float w) const {
    const float gloss = gloss_back_ + gloss_through_;
    const float sum = even_back_ + even_through_ + gloss;
    const float chosen = u * sum;
    if (chosen < gloss) {
        if (!above_horizon(wo)) return {wo, 0.0F, 0.0F};
        const Vec3 facet = sample_visible_normal(wo, alpha_, v, w);
        const Vec3 wi = mirror(wo, facet);
        if (!above_horizon(wi)) return {wo, 0.0F, 0.0F};
        const float weight = gloss_weight(wo.z, wi.z, alpha_);
        if (gloss_through_ > 0.0F) return {through(wi), sum * weight, 0.0F};
        return {wi, schlick(gloss_back_, glm::dot(wo, facet)) * weight, density_gloss(wo, facet, alpha_)};
    }
    const Vec3 even = sample_cosine(v, w);
    return {chosen < gloss + even_back_ ? even : through(even), sum, 0.0F};
}

}  // namespace understudy
