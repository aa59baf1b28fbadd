// What a denoiser knows of a picture besides its light: what is there, seen through any cornea and lens.
#pragma once

#include <vector>

#include "film/develop.h"

namespace understudy {

struct Features {
    Picture albedo;              // linear, as the picture is developed: reflectance 1 is 1
    std::vector<Vec3> normals;   // 0 where nothing is
    std::vector<float> depth_m;  // 0 where nothing is
};

// Of a film, under the developing of the picture that goes with it.
Features features_of(const Film& film, const Developing& developing);

}  // namespace understudy
