#include "sitter/skin_follow.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace understudy {

Follow follow(const std::vector<Pull>& pulls, const Falloff& falloff, const Double3& point) {
    constexpr double kSoft = 1e-8;
    Double3 sum(0.0);
    double total = 0.0;
    double nearest = std::numeric_limits<double>::max();
    double nearest_inner = nearest;
    for (const Pull& pull : pulls) {
        const Double3 gap = pull.at - point;
        const double squared = glm::dot(gap, gap);
        const double weight = 1.0 / ((squared + kSoft) * (squared + kSoft));
        sum += weight * pull.by;
        total += weight;
        nearest = std::min(nearest, squared);
        if (pull.inner) nearest_inner = std::min(nearest_inner, squared);
    }
    const double share = 1.0 - smooth_step((std::sqrt(nearest) - falloff.from) / (falloff.to - falloff.from));
    return {share / total * sum, share, std::sqrt(nearest_inner)};
}

}  // namespace understudy
