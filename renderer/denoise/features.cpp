#include "denoise/features.h"

namespace understudy {

Features features_of(const Film& film, const Developing& developing) {
    Features features{develop_albedo(film, developing), film.features.normal, film.features.depth_m};
    if (developing.treatment != Treatment::kBlackAndWhite) return features;
    // A grey picture's edges are where its own greys change.
    for (Vec3& albedo : features.albedo.pixels) {
        albedo = Vec3(brightness(albedo));
    }
    return features;
}

}  // namespace understudy
