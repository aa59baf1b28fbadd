// A thin pane of clear glass whose two faces are parallel: a spectacle lens without power. Some light is mirrored, the
// rest goes straight on.
#pragma once

#include <algorithm>
#include <cmath>

namespace understudy {

// Spectacle crown glass, and the plastic that most lenses are cast from (1.498): 4.0 % a face.
inline constexpr float kSpectacleIndex = 1.5F;
// What several thin layers leave of a face's reflection at normal incidence, averaged over the visible range: makers
// state 0.3 … 0.5 %. Common practice, no source.
inline constexpr float kCoatedFace = 0.004F;

// What two parallel faces send back in all, each reflecting r, the light going to and fro between them: 2r / (1 + r).
// (Stokes, "On the intensity of the light reflected from or transmitted through a pile of plates", 1862.)
inline float pair_of_faces(float r) { return 2.0F * r / (1.0F + r); }

// The share of unpolarised light that the pane mirrors; cosine in [0, 1] of the angle to its normal. The rest passes.
// Each polarisation goes to and fro for itself. Fresnel's equations, Born and Wolf, Principles of Optics, 1.5.2.
inline float plain_pane_reflectance(float cosine, float index) {
    const float sin2 = (1.0F - cosine * cosine) / (index * index);
    const float inside = std::sqrt(std::max(0.0F, 1.0F - sin2));
    const float parallel = (index * cosine - inside) / (index * cosine + inside);
    const float perpendicular = (cosine - index * inside) / (cosine + index * inside);
    return 0.5F * (pair_of_faces(parallel * parallel) + pair_of_faces(perpendicular * perpendicular));
}

// A coating is made for light that falls square on it. Away from that each face's reflection rises as bare glass's
// does, to all of the light at grazing incidence. The shape of the rise is assumed.
inline float coated_pane_reflectance(float cosine, float index, float face_reflectance) {
    const float sin2 = (1.0F - cosine * cosine) / (index * index);
    const float inside = std::sqrt(std::max(0.0F, 1.0F - sin2));
    const float parallel = (index * cosine - inside) / (index * cosine + inside);
    const float perpendicular = (cosine - index * inside) / (cosine + index * inside);
    const float bare = 0.5F * (parallel * parallel + perpendicular * perpendicular);
    const float normal = (index - 1.0F) * (index - 1.0F) / ((index + 1.0F) * (index + 1.0F));
    const float rise = std::max(0.0F, bare - normal) / (1.0F - normal);
    return pair_of_faces(face_reflectance + (1.0F - face_reflectance) * rise);
}

}  // namespace understudy
