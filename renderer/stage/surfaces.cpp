#include "stage/surfaces.h"

#include <algorithm>

#include "scatter/eye_colours.h"
#include "scatter/skin.h"

namespace understudy {

namespace {

// Reflector cloth: metallised, crinkled. Common practice, no source.
constexpr float kMetalRoughness = 0.25F;
// The plain top. Invented.
constexpr float kTopReflectance = 0.11F;
// The mouth's inside is dark. Invented.
constexpr float kMouthReflectance = 0.12F;

// Every place has its own; this one says how smooth the smoothest is.
SkinSurface skin_of(const Sitter& sitter) {
    SkinSpot spot;
    for (const SkinVertex& vertex : sitter.mesh.skin) spot.roughness = std::min(spot.roughness, vertex.spot.roughness);
    return SkinSurface(spot);
}

}  // namespace

Surface board_surface(const Finish& finish) {
    if (const auto* matt = std::get_if<Reflectance>(&finish)) {
        return MattSurface{Spectrum(static_cast<float>(matt->value))};
    }
    if (const auto* cloth = std::get_if<Cloth>(&finish)) {
        return ThinCloth(Spectrum(static_cast<float>(cloth->reflects)), Spectrum(static_cast<float>(cloth->transmits)),
                         static_cast<float>(cloth->open));
    }
    if (const auto* tint = std::get_if<Tint>(&finish)) return MattSurface{tint->reflectance};
    const bool silver = std::get<Metal>(finish) == Metal::kSilver;
    return RoughMetal(silver ? silver_reflectance() : gold_reflectance(), kMetalRoughness);
}

std::vector<Surface> zone_surfaces(const Sitter& sitter) {
    std::vector<Surface> surfaces(static_cast<std::size_t>(Zone::kCount), skin_of(sitter));
    const auto set = [&](Zone zone, const Surface& surface) { surfaces[static_cast<std::size_t>(zone)] = surface; };
    set(Zone::kMouth, MattSurface{skin_albedo(0.01, 0.15) * kMouthReflectance});
    set(Zone::kTop, MattSurface{Spectrum(kTopReflectance)});
    return surfaces;
}

Surface eye_white_surface() { return CoatedSurface(sclera_albedo(), kTearIndex, kTearRoughness); }

Surface iris_surface() { return MattSurface{iris_albedo()}; }

}  // namespace understudy
