// How the skin differs over a head: redder cheeks, nose and ears, lips, oilier forehead, thin lids.
//
// Laid out by the program from the head's landmarks, one cast a vertex, so that it fits any head and has no borders.
// The casts are factors on the sitter's own melanin, blood and shine.
#pragma once

#include <vector>

#include "scatter/skin_spot.h"
#include "sitter/landmarks.h"

namespace understudy {

struct SkinCast {
    float melanin = 1.0F, blood = 1.0F, roughness = 1.0F, coat = 1.0F;
    float pores = 0.3F;  // how deep: 1 where they are deepest
    float lip = 0.0F;    // 1 on the red of the lips
};

// One a vertex. Without places (a mesh of one's own) the skin is alike all over. man: 0 a woman's face … 1 a man's,
// with the shadow of a shaven beard.
std::vector<SkinCast> cast_skin(const SkinnedMesh& mesh, const std::optional<SkinPlaces>& places,
                                const std::optional<std::array<Double3, 2>>& eyes, double man);

// shine: 0 powdered, 0.5 clean skin, 1 glossy.
SkinSpot spot_of(const SkinCast& cast, double melanin, double blood, double shine);

}  // namespace understudy
