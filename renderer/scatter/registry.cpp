#include "scatter/registry.h"

#include "scatter/eye_colours.h"
#include "scatter/iris_colour.h"
#include "scatter/skin.h"

namespace understudy {

std::vector<NamedSurface> every_surface() {
    const Spectrum white(1.0F);
    const CoatedSurface oiled(white, kSkinIndex, kSkinRoughness);
    const CoatedSurface sclera(sclera_albedo(), kTearIndex, kTearRoughness);
    return {
        {"grey card", MattSurface{Spectrum(0.18F)}},
        {"iris", MattSurface{iris_albedo(iris_pigment(IrisColour::kHazel), 0.03)}},
        {"white paper", MattSurface{white}, true},
        {"light skin", SkinSurface()},
        {"dark, glossy skin", SkinSurface({0.3F, 0.02F, 0.18F, 1.0F})},
        {"powdered skin", SkinSurface({0.02F, 0.02F, 0.48F, 0.5F})},
        {"white under oil", oiled, true},
        {"black under oil", oiled.with_albedo(Spectrum(0.0F))},
        {"sclera", sclera},
        {"white under tears", sclera.with_albedo(white), true},
        {"white under a rough coat", CoatedSurface(white, 1.5F, 0.8F), true},
        {"silver", RoughMetal(silver_reflectance(), 0.3F)},
        {"gold", RoughMetal(gold_reflectance(), 0.5F)},
        {"smooth silver", RoughMetal(silver_reflectance(), 0.08F)},
        {"perfect rough metal", RoughMetal(white, 0.9F), true},
        {"perfect smooth metal", RoughMetal(white, 0.1F), true},
        {"diffusion cloth", ThinCloth(white * 0.55F, white * 0.38F, 0.0F)},
        {"cloth with holes", ThinCloth(white * 0.25F, white * 0.45F, 0.25F)},
        {"red cloth", ThinCloth(skin_albedo(0.02, 0.02) * 0.3F, skin_albedo(0.02, 0.1) * 0.5F, 0.1F)},
        {"black velvet", NappedCloth(Spectrum(0.04F), 0.8F, 0.5F)},
        {"wool", NappedCloth(skin_albedo(0.02, 0.02), 0.3F, 0.6F)},
        {"white felt", NappedCloth(white, 0.4F, 0.4F), true},
        {"white velvet", NappedCloth(white, 1.0F, 0.8F), true},
        {"cloth that takes nothing", ThinCloth(white * 0.5F, white * 0.3F, 0.2F), true},
    };
}

}  // namespace understudy
