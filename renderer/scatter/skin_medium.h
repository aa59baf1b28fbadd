// What light meets under the skin: a medium that scatters evenly to all sides, from the colour that the skin has.
//
// The colour stays the truth (scatter/skin.h): it already holds the layers and the boundary that keeps light in. The
// medium is the one whose half-space, with nothing to hold light back at its surface, has just this albedo.
#pragma once

#include "base/four.h"
#include "scatter/light4.h"

namespace understudy {

// Mean free path between two scatterings, metres, nm in [380, 780]: as the reduced scattering of the dermis falls with
// the wavelength (scatter/skin.h), 1 mm at 550 nm. H. W. Jensen and others, "A Practical Model for Subsurface Light
// Transport", SIGGRAPH 2001, measured 1.30, 0.95 and 0.67 mm in red, green and blue on skin.
double skin_mean_free_path_m(double nm);

// The share that one scattering leaves, for a half-space that sends the share `albedo` of diffuse light back; albedo in
// [0, 1]. From a table of 1 − 2 √(1 − α) ∫ H µ dµ over α: S. Chandrasekhar, Radiative Transfer, 1950.
Four single_scattering(const Four& albedo);

// How fast diffuse light dies away with depth, in mean free paths: the κ in (0, 1) of κ = α artanh κ. K. M. Case and P.
// F. Zweifel, Linear Transport Theory, 1967.
float diffuse_decay(float single_scattering);

struct SkinMedium {
    Four scattered{};   // of what is taken out of a ray, the share that goes on
    Four extinction{};  // 1/m
};

// For a base of this albedo at these wavelengths.
SkinMedium skin_medium(const Light4& albedo, const Waves& waves);

}  // namespace understudy
