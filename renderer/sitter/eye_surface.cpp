#include "sitter/eye_surface.h"

#include <algorithm>
#include <cmath>

namespace understudy {

double eye_surface_radius(const Eye& eye, const Double3& way) {
    // The far cut with the corneal sphere, whose centre lies kCorneaCentreAhead along the axis.
    const double along = kCorneaCentreAhead * glm::dot(way, eye.axis);
    const double across_squared = kCorneaCentreAhead * kCorneaCentreAhead - along * along;
    const double half_squared = kCorneaRadius * kCorneaRadius - across_squared;
    const double cornea = half_squared > 0.0 ? along + std::sqrt(half_squared) : 0.0;
    return std::max(kEyeballRadius, cornea);
}

double height_above_eye(const Eye& eye, const Double3& point) {
    const Double3 offset = point - eye.centre;
    const double distance = glm::length(offset);
    if (distance <= 0.0) return -kEyeballRadius;
    return distance - eye_surface_radius(eye, offset / distance);
}

Double3 at_height(const Eye& eye, const Double3& point, double height) {
    const Double3 way = glm::normalize(point - eye.centre);
    return eye.centre + (eye_surface_radius(eye, way) + height) * way;
}

}  // namespace understudy
