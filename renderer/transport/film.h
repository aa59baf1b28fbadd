// What transport leaves behind: for each light and each pixel, how much of that light comes back, in spectral bands.
//
// A layer holds the mean over each band of the transfer from light to pixel: the radiance that reaches the film for a
// light that puts out 1 lm (or 1 lm·s) in all, were its spectrum flat: 1/(sr·m²) per lumen. The ambient layer is for
// even light of 1 lx. Power, spectrum, white balance, exposure and treatment come in when the film is developed
// (film/develop.h).
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "base/geometry.h"
#include "spectrum/waves.h"

namespace understudy {

struct FilmLayer {
    std::string light;          // the light's name; "ambient" for the room's even light
    std::vector<Bands> pixels;  // width × height, row by row from the top left; none while it is not traced
    // Of these, what a cornea or a lens mirrors of the light itself, alike in all bands: free of noise but for its
    // edge, and what cleaning would take for noise.
    std::vector<float> glints{};
};

// Means over a pixel of what the camera sees first through any cornea.
struct FilmFeatures {
    std::vector<Bands> albedo;   // reflectance, 0 … 1
    std::vector<Vec3> normal;    // studio axes
    std::vector<float> depth_m;  // from the lens, along the camera's axis; 0 where nothing is
    int samples = 0;             // camera paths a pixel that have told of it
};

struct Film {
    int width = 0;
    int height = 0;
    std::vector<FilmLayer> layers;
    FilmFeatures features;
    int samples = 0;  // camera paths a pixel so far

    std::size_t pixel_count() const { return static_cast<std::size_t>(width) * static_cast<std::size_t>(height); }
};

}  // namespace understudy
