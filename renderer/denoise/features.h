// What a denoiser knows of a picture besides its light: what is there, seen through any cornea and lens.
#pragma once

#include <cmath>
#include <vector>

#include "film/develop.h"

namespace understudy {

inline bool is_number(const Vec3& pixel) {
    return std::isfinite(pixel.x) && std::isfinite(pixel.y) && std::isfinite(pixel.z);
}

// Luminance of linear light with BT.709's primaries.
inline float brightness(const Vec3& light) { return glm::dot(light, Vec3(0.2126F, 0.7152F, 0.0722F)); }

struct Features {
    Picture albedo;              // linear, as the picture is developed: reflectance 1 is 1
    std::vector<Vec3> normals;   // 0 where nothing is
    std::vector<float> depth_m;  // 0 where nothing is
};

// Of a film, under the developing of the picture that goes with it.
Features features_of(const Film& film, const Developing& developing);

}  // namespace understudy
