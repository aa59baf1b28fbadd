// How light leaves a surface: one value for every kind, and what the path loop asks of it.
//
// Everything is in the surface's local frame: normal +z, wo and wi unit and both pointing away from the surface. Below
// the horizon everything is zero, but for what a thin cloth lets through. Which lobe a sample comes from depends on the
// surface and wo only, never on the lights.
#pragma once

#include <optional>
#include <variant>

#include "scatter/coated_surface.h"
#include "scatter/matt_surface.h"
#include "scatter/napped_cloth.h"
#include "scatter/rough_metal.h"
#include "scatter/skin_surface.h"
#include "scatter/thin_cloth.h"

namespace understudy {

using Surface = std::variant<MattSurface, CoatedSurface, RoughMetal, ThinCloth, NappedCloth, SkinSurface>;

// std::visit over the kinds, without its table of function pointers, so that small cases are inlined.
template <class Visitor>
decltype(auto) visit_surface(const Surface& surface, const Visitor& visitor) {
    static_assert(std::variant_size_v<Surface> == 6, "give the new kind its branch");
    if (const auto* skin = std::get_if<SkinSurface>(&surface)) return visitor(*skin);
    if (const auto* matt = std::get_if<MattSurface>(&surface)) return visitor(*matt);
    if (const auto* coated = std::get_if<CoatedSurface>(&surface)) return visitor(*coated);
    if (const auto* metal = std::get_if<RoughMetal>(&surface)) return visitor(*metal);
    if (const auto* napped = std::get_if<NappedCloth>(&surface)) return visitor(*napped);
    return visitor(*std::get_if<ThinCloth>(&surface));
}

// What serves every question about one wo.
inline Approach approach(const Surface& surface, const Vec3& wo, const Waves& waves) {
    return visit_surface(surface, [&](const auto& kind) { return approach(kind, wo, waves); });
}

// 1/sr, WITHOUT the cosine, and the solid-angle density of wi.
inline ScatterValue scatter_value(const Surface& surface, const Approach& from, const Vec3& wi) {
    return visit_surface(surface, [&](const auto& kind) { return scatter_value(kind, from, wi); });
}
inline ScatterValue scatter_value(const Surface& surface, const Vec3& wo, const Vec3& wi, const Waves& waves) {
    return scatter_value(surface, approach(surface, wo, waves), wi);
}

// 1/sr, WITHOUT the cosine.
inline Light4 evaluate_scatter(const Surface& surface, const Vec3& wo, const Vec3& wi, const Waves& waves) {
    return scatter_value(surface, wo, wi, waves).value;
}

// u in [0, 1)³: u.x chooses the lobe, u.y and u.z the direction. None: the sample fell below the horizon and carries
// nothing; the path ends there without bias.
inline std::optional<ScatterSample> sample_scatter(const Surface& surface, const Approach& from, const Vec3& u) {
    return visit_surface(surface, [&](const auto& kind) { return sample_scatter(kind, from, u); });
}
inline std::optional<ScatterSample> sample_scatter(const Surface& surface, const Vec3& wo, const Waves& waves,
                                                   const Vec3& u) {
    return sample_scatter(surface, approach(surface, wo, waves), u);
}

// The share of even light from everywhere that comes back: the denoiser's colour layer.
inline Light4 albedo(const Surface& surface, const Waves& waves) {
    return visit_surface(surface, [&](const auto& kind) { return albedo(kind, waves); });
}

inline bool is_skin(const Surface& surface) { return std::holds_alternative<SkinSurface>(surface); }

// Whether light that falls on the back is scattered out of the front.
inline bool transmits(const Surface& surface) { return std::holds_alternative<ThinCloth>(surface); }

// What passes straight through.
inline float open_share(const Surface& surface) {
    const auto* cloth = std::get_if<ThinCloth>(&surface);
    return cloth == nullptr ? 0.0F : cloth->open();
}

// Whether the surface is smooth enough that sampling it finds lights better than sampling the lights does.
inline bool wants_mis(const Surface& surface) {
    return visit_surface(surface, [](const auto& kind) { return wants_mis(kind); });
}

}  // namespace understudy
