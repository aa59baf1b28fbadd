#include "sitter/wardrobe/weave.h"

#include <algorithm>
#include <cmath>

#include "sitter/wardrobe/folds.h"

namespace understudy {
namespace {

// Noise of some pitch along each axis, metres, whose height is such a share of the least of them.
struct Grain {
    Double3 pitch;
    double height;
    unsigned seed;
};

Double3 slope_of(const Grain& grain, const Double3& place) {
    const double height = grain.height * std::min({grain.pitch.x, grain.pitch.y, grain.pitch.z});
    return height * sloped_gradient_noise(place / grain.pitch, grain.seed).slope / grain.pitch;
}

// Round a neck: 3.4 mm from rib to rib on a neck of 13 cm.
Double3 rib_slope(const Double3& from_axis) {
    constexpr double kRibs = 120.0;
    const double angle = std::atan2(from_axis.x, from_axis.z);
    const double radius = std::max(0.02, std::hypot(from_axis.x, from_axis.z));
    const Double3 round(std::cos(angle), 0.0, -std::sin(angle));
    return 0.55 * std::sin(kRibs * angle) * std::min(1.0, 0.065 / radius) * round;
}

Double3 twill_slope(const Double3& place) {
    constexpr double kPitch = 0.0022;
    const Double3 across = glm::normalize(Double3(1.0, 1.0, 0.25));
    return 0.10 * std::cos(2.0 * kPiDouble / kPitch * glm::dot(place, across)) * across;
}

Double3 grain_slope(Fabric fabric, const Double3& place) {
    switch (fabric) {
        case Fabric::kJersey:
            return slope_of({{0.0011, 0.0030, 0.0011}, 0.22, 1}, place);
        case Fabric::kCotton:
            return slope_of({{0.0009, 0.0025, 0.0009}, 0.09, 2}, place) +
                   slope_of({{0.0030, 0.0008, 0.0030}, 0.09, 3}, place);
        case Fabric::kWool:
            return slope_of({{0.0012, 0.0012, 0.0012}, 0.15, 4}, place) + twill_slope(place);
        case Fabric::kVelvet:
            return slope_of({{0.0020, 0.0040, 0.0020}, 0.14, 5}, place);
        case Fabric::kFelt:
            break;
    }
    return slope_of({{0.0013, 0.0013, 0.0013}, 0.16, 6}, place);
}

}  // namespace

Double3 weave_slope(const WeaveOf& weave, const Double3& straight) {
    Double3 slope = grain_slope(weave.fabric, straight);
    if (weave.ribbed) slope += rib_slope(straight - weave.neck_base - Double3(0.0, 0.0, 0.015));
    return slope;
}

}  // namespace understudy
