#include "denoise/features.h"

namespace understudy {

Features features_of(const Film& film, const Developing& developing) {
    Features features{develop_albedo(film, developing), film.features.normal, film.features.depth_m};
    if (developing.treatment != Treatment::kBlackAndWhite) return features;
    // A grey picture's edges are where its own greys change.
    for (Vec3& albedo : features.albedo.pixels) {
        albedo = Vec3(glm::dot(albedo, Vec3(0.2126F, 0.7152F, 0.0722F)));  // BT.709's luminance
    }
    return features;
}

}  // namespace understudy
