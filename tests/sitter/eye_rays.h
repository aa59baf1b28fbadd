// Rays at the eyes and the skin round them.
#pragma once

#include <algorithm>
#include <cmath>
#include <utility>

#include "sitter/eye.h"
#include "sitter/head_for_test.h"
#include "stage/triangle_scene.h"

namespace understudy {

// Distance along a ray to the eye's outside, or far away.
inline double to_eye(const Eye& eye, const Double3& origin, const Double3& way) {
    double best = 1e9;
    for (const auto& [centre, radius] : {std::pair{eye.centre, kEyeballRadius}, {cornea_centre(eye), kCorneaRadius}}) {
        const Double3 offset = origin - centre;
        const double b = glm::dot(offset, way);
        const double c = glm::dot(offset, offset) - radius * radius;
        if (b * b - c >= 0.0) best = std::min(best, -b - std::sqrt(b * b - c));
    }
    return best;
}

inline TriangleScene rays_at(const Sitter& sitter) { return {sitter.mesh.positions, sitter.mesh.triangles}; }

inline double first_distance(const TriangleScene& scene, const Double3& origin, const Double3& way) {
    return static_cast<double>(scene.distance({Vec3(origin), Vec3(way)}));
}

}  // namespace understudy
