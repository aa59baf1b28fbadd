// What a modifier's wall, plate or cloth does with light, without colour.
//
// A matt wall scatters evenly; a silver one as GGX facets with Schlick's term, as scatter/rough_metal has them but
// without the light that strikes two facets, which counts as absorbed. A cloth is both wall and window: part comes back
// evenly, part goes through evenly, part keeps near its direction in a lobe that is a metal's, mirrored through the
// sheet. That form is reciprocal, so light may be followed either way; it rests on what photographers see through a
// single cloth (a hot spot that a second cloth hides: common practice, no source) and not on a goniometer.
#pragma once

#include "base/geometry.h"
#include "setup/construction.h"

namespace understudy {

struct SheetSample {
    Vec3 wi;        // local; z < 0: through the sheet
    float weight;   // value · |cos| / density, at most 1
    float density;  // 1/sr; 0 where only sampling the tube counts
};

class Sheet {
  public:
    static Sheet wall(const Lining& lining);
    static Sheet cloth(const DiffusingCloth& cloth);

    // Per unit solid angle, without the cosine. Local directions, unit, away from the sheet; wo.z > 0.
    float value(const Vec3& wo, const Vec3& wi) const;
    // Of the direction only, u chooses between the lobes. Nothing reflected: weight 0.
    SheetSample sample(const Vec3& wo, float u, float v, float w) const;
    // The density that sample() reports: of a metal.
    float density(const Vec3& wo, const Vec3& wi) const;

    bool metal() const { return gloss_back_ > 0.0F; }
    // For the two parts of a cloth's front, which is looked at from outside.
    float even_through() const { return even_through_; }
    float gloss_through(const Vec3& wo, const Vec3& wi_through) const;

  private:
    float even_back_ = 0.0F;
    float even_through_ = 0.0F;
    float gloss_back_ = 0.0F;  // reflectance at normal incidence
    float gloss_through_ = 0.0F;
    float alpha_ = 0.3F;
};

}  // namespace understudy
