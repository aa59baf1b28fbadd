#include "stage/surfaces.h"

#include <algorithm>

#include "scatter/eye_colours.h"
#include "scatter/skin.h"
#include "sitter/wardrobe/clothes.h"

namespace understudy {

namespace {

constexpr float kLipRoughness = 0.22F;
// Reflector cloth: metallised, crinkled. Common practice, no source.
constexpr float kMetalRoughness = 0.25F;
// Polished plastic and metal of a frame. Invented.
constexpr float kFrameIndex = 1.49F;
constexpr float kFrameRoughness = 0.12F;
constexpr float kWireRoughness = 0.18F;
// Lips show more blood and less melanin than the skin round them; the mouth's inside is dark. Invented shares.
constexpr double kLipBlood = 7.0;
constexpr double kLipMelanin = 0.6;
constexpr float kMouthReflectance = 0.12F;

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
    const CoatedSurface skin(skin_albedo(sitter.melanin, sitter.blood), kSkinIndex, kSkinRoughness);
    std::vector<Surface> surfaces(static_cast<std::size_t>(Zone::kCount), skin);
    const auto set = [&](Zone zone, const Surface& surface) { surfaces[static_cast<std::size_t>(zone)] = surface; };
    set(Zone::kLips, CoatedSurface(skin_albedo(kLipMelanin * sitter.melanin, std::min(0.2, kLipBlood * sitter.blood)),
                                   kSkinIndex, kLipRoughness));
    set(Zone::kMouth, MattSurface{skin_albedo(0.01, 0.15) * kMouthReflectance});
    const ClothesSettings& clothes = sitter.clothes;
    const Surface outer = cloth_surface(clothes.colour, fabric_of(clothes));
    const bool jacket = clothes.outfit == Outfit::kJacket;
    const Surface inner = jacket ? cloth_surface(clothes.shirt_colour, Fabric::kCotton) : outer;
    set(Zone::kTop, inner);
    set(Zone::kCollar, inner);
    set(Zone::kJacket, outer);
    if (sitter.hat) set(Zone::kHat, cloth_surface(sitter.hat->colour, Fabric::kFelt));
    if (sitter.glasses) set(Zone::kGlasses, frame_surface(sitter.glasses->colour));
    return surfaces;
}

Surface eye_white_surface() { return CoatedSurface(sclera_albedo(), kTearIndex, kTearRoughness); }

Surface iris_surface() { return MattSurface{iris_albedo()}; }

}  // namespace understudy
