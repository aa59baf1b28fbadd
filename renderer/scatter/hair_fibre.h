// How light leaves a hair: a clear, tinted cylinder under scales that are tilted toward its root.
//
// Four ways of the light are told apart: R is mirrored off the outside, TT goes straight through, TRT is mirrored once
// inside and brings the coloured second highlight, and the rest has been mirrored more often. Marschner and others,
// "Light Scattering from Human Hair Fibers", SIGGRAPH 2003; the lobes along the fibre after d'Eon and others, "An
// Energy-Conserving Hair Reflectance Model", EGSR 2011; round the fibre and the rest after Chiang and others, "A
// Practical and Controllable Hair and Fur Model for Production Path Tracing", EGSR 2016.
//
// Everything is in the fibre's frame: +x along it from root to tip, y and z square to it, wo and wi unit and both
// pointing away. A fibre scatters to all sides, and where across it a path meets it counts, so it is no alternative of
// Surface: the tangent and the place across come with each hit.
#pragma once

#include <array>
#include <cstddef>

#include "base/four.h"
#include "base/geometry.h"
#include "scatter/light4.h"

namespace understudy {

inline constexpr float kHairIndex = 1.55F;   // of keratin: J. Cosmetic Sci. 54 (2003) 306
inline constexpr float kCuticleTilt = 2.5F;  // degrees: the same page; Marschner 2003 measured 2 to 4
inline constexpr std::size_t kFibreLobes = 4;

// Concentrations of the two melanins in the fibre, in the unit of the published models: 0.3 of eumelanin is blond, 1.3
// brown, 8 black.
struct HairPigment {
    double eumelanin = 1.3;
    double pheomelanin = 0.0;
};

// Absorption coefficient inside the fibre, per fibre radius. Spectral shapes of Donner and Jensen, "A Spectral BSSRDF
// for Shading Human Skin", EGSR 2006; scaled to the colour channels of d'Eon and others 2011.
Spectrum hair_absorption(const HairPigment& pigment);

struct HairFibre {
    Spectrum absorption;         // per fibre radius
    float along_deg = 7.5F;      // the spread of R along the fibre: Marschner 2003 gives 5 to 10; TT half, TRT twice
    float round_spread = 0.12F;  // scale of the logistic distribution round the fibre, radians
};

// What is the same of a fibre wherever across it a path meets it. One number a lobe.
struct FibreAlong {
    float sin_along = 0.0F;  // of wo over the plane square to the fibre
    float cos_along = 1.0F;
    float round = 0.0F;  // wo's azimuth, from y to z
    float spread = 0.12F;
    float round_scale = 0.0F;  // of the distribution round the fibre, so that it integrates to 1
    Four variance{};           // along the fibre
    Four along_scale{};        // as round_scale
    // Mirrored this way along the fibre, the lobe would be at its middle.
    Four middle_sine{};
    Four middle_cosine{};
};

// A fibre as one path meets it.
struct FibreApproach : FibreAlong {
    std::array<float, kFibreLobes> turn{};    // of each lobe's middle round the fibre from wo, radians
    std::array<Light4, kFibreLobes> share{};  // of the light, at the path's wavelengths
    std::array<float, kFibreLobes> chance{};  // that a sample takes this lobe
};

// across: where the path meets the fibre, −1 … 1 radii from its axis toward cross(wo, +x).
// blur: radians, of a normal distribution that all lobes are widened by, along the fibre and round it; 0: the fibre as
// it is.
FibreApproach approach_fibre(const HairFibre& fibre, const Vec3& wo, float across, const Waves& waves,
                             float blur = 0.0F);

struct FibreValue {
    Light4 value{0.0F};    // 1/sr, WITH the cosine of wi over the plane square to the fibre
    float density = 0.0F;  // per unit solid angle of wi
};
FibreValue fibre_value(const FibreApproach& from, const Vec3& wi);

struct FibreSample {
    Vec3 wi;
    Light4 weight;         // value over density
    float density = 0.0F;  // per unit solid angle of wi
};
// u in [0, 1)³. Always gives a direction.
FibreSample sample_fibre(const FibreApproach& from, const Vec3& u);

// What comes back of even light from all around.
inline Light4 fibre_albedo(const FibreApproach& from) {
    return from.share[0] + from.share[1] + from.share[2] + from.share[3];
}

}  // namespace understudy
