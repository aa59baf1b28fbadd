// A ray against one triangle. Möller and Trumbore, "Fast, Minimum Storage Ray/Triangle Intersection", JGT 2(1), 1997.
#pragma once

#include <array>
#include <optional>

#include "base/geometry.h"

namespace understudy {

struct TriangleMeeting {
    double distance;
    double b, c;  // shares of the second and third corner
};

// None behind the origin, beside the triangle, or where its back is seen.
inline std::optional<TriangleMeeting> meet_front(const Double3& origin, const Double3& way,
                                                 const std::array<Double3, 3>& corners) {
    const Double3 ab = corners[1] - corners[0];
    const Double3 ac = corners[2] - corners[0];
    const Double3 p = glm::cross(way, ac);
    const double det = glm::dot(ab, p);
    if (det <= 0.0) return std::nullopt;
    const Double3 s = origin - corners[0];
    const double b = glm::dot(s, p) / det;
    if (b < 0.0 || b > 1.0) return std::nullopt;
    const Double3 q = glm::cross(s, ab);
    const double c = glm::dot(way, q) / det;
    const double distance = glm::dot(ac, q) / det;
    if (c < 0.0 || b + c > 1.0 || distance <= 0.0) return std::nullopt;
    return TriangleMeeting{distance, b, c};
}

}  // namespace understudy
