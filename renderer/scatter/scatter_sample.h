// What sampling and evaluating a surface give back.
#pragma once

#include "base/geometry.h"
#include "scatter/light4.h"
#include "scatter/skin_spot.h"

namespace understudy {

// A surface as one path comes to it: what is the same for every direction that it may go on in.
struct Approach {
    Vec3 wo;                 // local
    Light4 colour{0.0F};     // of the base or the metal, at the path's wavelengths
    float reflected = 0.0F;  // by the coat or the facets, of what comes from wo
    Light4 through{0.0F};    // of what is scattered out of the other side
    SkinSpot spot{};         // of skin
    SkinPart part = SkinPart::kBoth;
};

struct ScatterSample {
    Vec3 wi;
    Light4 weight;         // value times cosine over density
    float density = 0.0F;  // per unit solid angle of wi; 0 for a delta direction
    bool delta = false;    // straight on, through the surface
};

// Value and density of one pair of directions, for those who need both.
struct ScatterValue {
    Light4 value{0.0F};    // 1/sr, without the cosine
    float density = 0.0F;  // per unit solid angle of wi
};

}  // namespace understudy
