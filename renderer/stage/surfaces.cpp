#include "stage/surfaces.h"

#include <algorithm>

#include "scatter/eye_colours.h"
#include "scatter/skin.h"

namespace understudy {

namespace {

constexpr float kLipRoughness = 0.22F;
// Reflector cloth: metallised, crinkled. Common practice, no source.
constexpr float kMetalRoughness = 0.25F;
// The plain top. Invented.
constexpr float kTopReflectance = 0.11F;
// Lips show more blood and less melanin than the skin round them; the mouth's inside is dark. Invented shares.
constexpr double kLipBlood = 7.0;
constexpr double kLipMelanin = 0.6;
constexpr float kMouthReflectance = 0.12F;
// The inner corner of the eye and the edges of the lids behind the tears. Invented.
constexpr double kMoistMelanin = 0.004;
constexpr double kMoistBlood = 0.03;
constexpr float kCaruncleRoughness = 0.12F;

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
    const CoatedSurface skin(skin_albedo(sitter.melanin, sitter.blood), kSkinIndex, kSkinRoughness);
    std::vector<Surface> surfaces(static_cast<std::size_t>(Zone::kCount), skin);
    const auto set = [&](Zone zone, const Surface& surface) { surfaces[static_cast<std::size_t>(zone)] = surface; };
    set(Zone::kLips, CoatedSurface(skin_albedo(kLipMelanin * sitter.melanin, std::min(0.2, kLipBlood * sitter.blood)),
                                   kSkinIndex, kLipRoughness));
    set(Zone::kMouth, MattSurface{skin_albedo(0.01, 0.15) * kMouthReflectance});
    set(Zone::kTop, MattSurface{Spectrum(kTopReflectance)});
    const Spectrum moist = skin_albedo(kMoistMelanin, kMoistBlood);
    set(Zone::kTearLine, CoatedSurface(moist, kTearIndex, kTearRoughness));
    set(Zone::kCaruncle, CoatedSurface(moist, kTearIndex, kCaruncleRoughness));
    return surfaces;
}

Surface eye_white_surface() { return CoatedSurface(sclera_albedo(), kTearIndex, kTearRoughness); }

}  // namespace understudy
