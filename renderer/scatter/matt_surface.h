// A surface that scatters evenly: paper, cloth, a painted backdrop, an iris. Lambert's law.
#pragma once

#include <optional>

#include "scatter/microfacet.h"
#include "scatter/scatter_sample.h"

namespace understudy {

struct MattSurface {
    Spectrum albedo;
};

inline Approach approach(const MattSurface& surface, const Vec3& wo, const Waves& waves) {
    return {wo, at(surface.albedo, waves), 0.0F};
}

inline ScatterValue scatter_value(const MattSurface&, const Approach& from, const Vec3& wi) {
    if (!above_horizon(from.wo) || !above_horizon(wi)) return {};
    return {from.colour * (1.0F / kPi), wi.z * (1.0F / kPi)};
}

inline std::optional<ScatterSample> sample_scatter(const MattSurface&, const Approach& from, const Vec3& u) {
    if (!above_horizon(from.wo)) return std::nullopt;
    const Vec3 wi = sample_cosine(u.y, u.z);
    if (!above_horizon(wi)) return std::nullopt;
    return ScatterSample{wi, from.colour, wi.z / kPi, false};
}

inline Light4 albedo(const MattSurface& surface, const Waves& waves) { return at(surface.albedo, waves); }

inline bool wants_mis(const MattSurface&) { return false; }

}  // namespace understudy
