// The reflecting lobe of a rough boundary: GGX slopes of width alpha under Smith's height-correlated masking.
//
// Heitz, "Understanding the Masking-Shadowing Function in Microfacet-Based BRDFs", JCGT 3(2), 2014 (G2: eq. 99); Heitz,
// "Sampling the GGX Distribution of Visible Normals", JCGT 7(4), 2018. The quotients are multiplied out so that nothing
// divides by a cosine that may be 0. Directions are unit, local (normal +z), away from the surface, and have z >= 0.
#pragma once

#include <algorithm>
#include <cmath>

#include "base/turns.h"

namespace understudy {

// Smoother lobes than this are narrower than the steps of the albedo table.
inline constexpr float kLeastAlpha = 0.01F;

// From this roughness on, sampling the lights alone finds every highlight.
inline constexpr float kBroadAlpha = 0.2F;

// A coat so smooth that light sampling misses its highlights gets at least this share of the samples, although it
// reflects only some 2 % of the light: chosen, not measured.
inline constexpr float kLeastSharpCoatShare = 0.25F;

// Nearer the horizon than this a direction counts as on it: half-way vectors of two such directions lose their digits.
inline constexpr float kHorizon = 1e-6F;

inline bool above_horizon(const Vec3& w) { return w.z > kHorizon; }

// Per unit solid angle of the facet normal h. Written with the sine and not 1 − cos², which would cancel at small
// alpha.
inline float ggx_distribution(const Vec3& h, float alpha) {
    const float a2 = alpha * alpha;
    const float stretched = (h.x * h.x + h.y * h.y) / a2 + h.z * h.z;
    return 1.0F / (kPi * a2 * stretched * stretched);
}

// cos θ · (1 + 2Λ(θ)): Smith's Λ without its division.
inline float smith_root(float cosine, float alpha) {
    return std::sqrt(cosine * cosine + alpha * alpha * std::max(0.0F, 1.0F - cosine * cosine));
}

// G2 / (4 cos_o cos_i), so that the lobe is D times this times the Fresnel term, without the cosine.
inline float smith_visibility(float cos_o, float cos_i, float alpha) {
    return 0.5F / (cos_i * smith_root(cos_o, alpha) + cos_o * smith_root(cos_i, alpha));
}

// Solid-angle density of wi when the facet that mirrors wo into it is drawn by sample_visible_normal: G1 D / (4 cos_o).
inline float density_gloss(const Vec3& wo, const Vec3& h, float alpha) {
    return ggx_distribution(h, alpha) / (2.0F * (wo.z + smith_root(wo.z, alpha)));
}

// G2 / G1: what a direction drawn with that density weighs, cosine included, before the Fresnel term.
inline float gloss_weight(float cos_o, float cos_i, float alpha) {
    const float root_o = smith_root(cos_o, alpha);
    const float below = root_o * cos_i + smith_root(cos_i, alpha) * cos_o;
    return below > 0.0F ? cos_i * (cos_o + root_o) / below : 0.0F;
}

// A facet normal with the density G1 D max(0, wo·h) / cos_o; Heitz 2018, appendix A.
inline Vec3 sample_visible_normal(const Vec3& wo, float alpha, float u, float v) {
    const Vec3 view = glm::normalize(Vec3(alpha * wo.x, alpha * wo.y, wo.z));
    const float across2 = view.x * view.x + view.y * view.y;
    const Vec3 first = across2 > 0.0F ? Vec3(-view.y, view.x, 0.0F) / std::sqrt(across2) : Vec3(1.0F, 0.0F, 0.0F);
    const Vec3 second = glm::cross(view, first);
    const Vec2 across = std::sqrt(u) * turned(v);
    const float a = across.x;
    const float share = 0.5F * (1.0F + view.z);
    const float b = (1.0F - share) * std::sqrt(std::max(0.0F, 1.0F - a * a)) + share * across.y;
    const float c = std::sqrt(std::max(0.0F, 1.0F - a * a - b * b));
    const Vec3 normal = a * first + b * second + c * view;
    return glm::normalize(Vec3(alpha * normal.x, alpha * normal.y, std::max(1e-6F, normal.z)));
}

inline Vec3 mirror(const Vec3& w, const Vec3& h) { return 2.0F * glm::dot(w, h) * h - w; }

// A direction with the density cos θ / π per unit solid angle.
inline Vec3 sample_cosine(float u, float v) {
    const Vec2 across = std::sqrt(u) * turned(v);
    return {across.x, across.y, std::sqrt(std::max(0.0F, 1.0F - u))};
}

}  // namespace understudy
