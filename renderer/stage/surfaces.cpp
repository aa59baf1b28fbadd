#include "stage/surfaces.h"

#include <algorithm>

#include "scatter/enamel.h"
#include "scatter/eye_colours.h"
#include "scatter/skin.h"
#include "sitter/wardrobe/clothes.h"

namespace understudy {

namespace {

// Reflector cloth: metallised, crinkled. Common practice, no source.
constexpr float kMetalRoughness = 0.25F;
// What lies behind the lids is dark, so that a gap between lid and eye does not shine. Invented.
constexpr float kSocketReflectance = 0.12F;
// Wet lining, redder than skin. By eye, no source.
constexpr double kLiningMelanin = 0.004;
constexpr double kLiningBlood = 0.10;
// The inner corner of the eye, the edges of the lids behind the tears, the mouth. Invented.
constexpr double kMoistMelanin = 0.004;
constexpr double kMoistBlood = 0.03;
constexpr float kMoistRoughness = 0.12F;

// Every place has its own; this one says how smooth the smoothest is.
SkinSurface skin_of(const Sitter& sitter) {
    SkinSpot spot;
    for (const SkinVertex& vertex : sitter.mesh.skin) spot.roughness = std::min(spot.roughness, vertex.spot.roughness);
    return SkinSurface(spot);
}

// Polished plastic and metal of a frame. Invented.
constexpr float kFrameIndex = 1.49F;
constexpr float kFrameRoughness = 0.12F;
constexpr float kWireRoughness = 0.18F;
// How much nap each cloth has, and how softly it shines. By eye, no source.
Surface cloth_surface(const Spectrum& dye, Fabric fabric) {
    switch (fabric) {
        case Fabric::kJersey:
            return NappedCloth(dye, 0.12F, 0.6F);
        case Fabric::kCotton:
            return NappedCloth(dye, 0.06F, 0.5F);
        case Fabric::kWool:
            return NappedCloth(dye, 0.20F, 0.6F);
        case Fabric::kVelvet:
            return NappedCloth(dye, 0.55F, 0.35F);
        case Fabric::kFelt:
            break;
    }
    return NappedCloth(dye, 0.16F, 0.8F);
}

Surface frame_surface(const Finish& finish) {
    if (const auto* metal = std::get_if<Metal>(&finish)) {
        return RoughMetal(*metal == Metal::kSilver ? silver_reflectance() : gold_reflectance(), kWireRoughness);
    }
    const auto* tint = std::get_if<Tint>(&finish);
    const Spectrum colour =
        tint != nullptr ? tint->reflectance : Spectrum(static_cast<float>(std::get<Reflectance>(finish).value));
    return CoatedSurface(colour, kFrameIndex, kFrameRoughness);
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
    set(Zone::kSocket, MattSurface{skin_albedo(0.01, 0.15) * kSocketReflectance});
    set(Zone::kMouth, CoatedSurface(skin_albedo(kLiningMelanin, kLiningBlood), kTearIndex, kMoistRoughness));
    set(Zone::kTeeth, CoatedSurface(enamel_albedo(), kWetEnamelIndex, kWetEnamelRoughness));
    const ClothesSettings& clothes = sitter.clothes;
    const Surface outer = cloth_surface(clothes.colour, fabric_of(clothes));
    const bool jacket = clothes.outfit == Outfit::kJacket;
    const Surface inner = jacket ? cloth_surface(clothes.shirt_colour, Fabric::kCotton) : outer;
    set(Zone::kTop, inner);
    set(Zone::kCollar, inner);
    set(Zone::kJacket, outer);
    if (sitter.hat) set(Zone::kHat, cloth_surface(sitter.hat->colour, Fabric::kFelt));
    if (sitter.glasses) set(Zone::kGlasses, frame_surface(sitter.glasses->colour));
    const Spectrum moist = skin_albedo(kMoistMelanin, kMoistBlood);
    set(Zone::kTearLine, CoatedSurface(moist, kTearIndex, kTearRoughness));
    set(Zone::kCaruncle, CoatedSurface(moist, kTearIndex, kMoistRoughness));
    return surfaces;
}

Surface eye_white_surface() { return CoatedSurface(sclera_albedo(), kTearIndex, kTearRoughness); }

}  // namespace understudy
