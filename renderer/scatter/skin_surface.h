// Skin at one place: its colour from what is in it, under a rough coat of sweat and oil. What changes over a face
// (SkinSpot) comes with each hit; a table of each law serves them all.
//
// Coat and base add up as in scatter/coated_surface.h. Where light is followed under the skin, the coat and what comes
// out from below are asked for apart.
#pragma once

#include <optional>

#include "scatter/microfacet.h"
#include "scatter/scatter_sample.h"
#include "scatter/skin.h"

namespace understudy {

class SkinSurface {
  public:
    // Of what is in it, and of its coat, wherever a hit does not say otherwise.
    explicit SkinSurface(const SkinSpot& spot = {}) : spot_(spot) {}
    const SkinSpot& spot() const { return spot_; }

  private:
    SkinSpot spot_;
};

// The colour under the coat at the path's wavelengths: skin_albedo of the spot's melanin and blood, from tables.
Light4 skin_colour(const SkinSpot& spot, const Waves& waves);

// Melanin lies in the outermost tenth of a millimetre, over flesh that light wanders through for millimetres. What the
// flesh alone would send back; and what melanin leaves of light on each of its two ways through it, in and out again,
// so that skin of one kind keeps its colour: its square times the flesh's colour is the skin's.
struct SkinDepth {
    Light4 flesh{0.0F};
    Light4 passes{1.0F};
};
SkinDepth skin_depth(const SkinSpot& spot, const Light4& colour, const Waves& waves);

// Of the light from one direction, the share that the coat sends back; and of light from everywhere.
float coat_reflectance(const SkinSpot& spot, float cosine);
float mean_coat_reflectance(const SkinSpot& spot);

Approach approach(const SkinSpot& spot, const Vec3& wo, const Waves& waves);
inline Approach approach(const SkinSurface& surface, const Vec3& wo, const Waves& waves) {
    return approach(surface.spot(), wo, waves);
}
// Only what the coat sends back.
Approach approach_of_coat(const SkinSpot& spot, const Vec3& wo);
// Only light from below the coat: of even light that reaches it from within, what goes out in each direction.
Approach approach_from_below(const SkinSpot& spot);

ScatterValue scatter_value(const SkinSurface& surface, const Approach& from, const Vec3& wi);
// u.x chooses between coat and base, u.y and u.z the direction.
std::optional<ScatterSample> sample_scatter(const SkinSurface& surface, const Approach& from, const Vec3& u);

// With this colour under the coat: of light that comes evenly from everywhere, what comes back.
Light4 albedo_over(const SkinSpot& spot, const Light4& colour);
inline Light4 albedo(const SkinSurface& surface, const Waves& waves) {
    return albedo_over(surface.spot(), skin_colour(surface.spot(), waves));
}

inline bool wants_mis(const SkinSurface& surface) { return surface.spot().roughness < kBroadAlpha; }

}  // namespace understudy
