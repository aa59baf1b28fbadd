#include "sitter/eye_set.h"

#include <algorithm>

namespace understudy {
namespace {

constexpr double kMostForward = 0.0035;
constexpr double kWhole = 0.016;  // from the middle of the eyeball: all of its lids
constexpr double kNone = 0.034;   // brow and cheekbone

Double3 middle_of(const std::vector<std::uint32_t>& vertices, const std::vector<Double3>& positions) {
    Double3 sum(0.0);
    for (const auto v : vertices) sum += positions[v];
    return sum / static_cast<double>(vertices.size());
}

double smooth_step(double from, double to, double at) {
    const double t = std::clamp((at - from) / (to - from), 0.0, 1.0);
    return t * t * (3.0 - 2.0 * t);
}

}  // namespace

std::vector<Double3> with_eyes_set(const HeadData& data, std::vector<Double3> positions, double amount) {
    const std::array<Double3, 2> eyes = {middle_of(data.eyes[0].eyeball, positions),
                                         middle_of(data.eyes[1].eyeball, positions)};
    for (Double3& p : positions) {
        const double distance = std::min(glm::distance(p, eyes[0]), glm::distance(p, eyes[1]));
        p.z += amount * kMostForward * (1.0 - smooth_step(kWhole, kNone, distance));
    }
    return positions;
}

}  // namespace understudy
