// Reflection and refraction at a smooth boundary.
#pragma once

#include <cmath>
#include <optional>

#include "base/geometry.h"

namespace understudy {

// The share of unpolarised light that a boundary between two dielectrics reflects; 1 in total internal reflection.
// cos_i in [0, 1] is measured on the side that the light comes from; eta is the index beyond over the index on that
// side. Fresnel's equations, as in Born and Wolf, Principles of Optics, 1.5.2.
inline float dielectric_fresnel(float cos_i, float eta) {
    const float sin2_t = (1.0F - cos_i * cos_i) / (eta * eta);
    if (sin2_t >= 1.0F) return 1.0F;
    const float cos_t = std::sqrt(1.0F - sin2_t);
    const float parallel = (eta * cos_i - cos_t) / (eta * cos_i + cos_t);
    const float perpendicular = (cos_i - eta * cos_t) / (cos_i + eta * cos_t);
    return 0.5F * (parallel * parallel + perpendicular * perpendicular);
}

// Where light that came along -w goes on beyond the boundary; none in total internal reflection. w points away from the
// boundary, to the same side as its unit normal; eta as above. Snell's law.
inline std::optional<Vec3> refract(const Vec3& w, const Vec3& normal, float eta) {
    const float cos_i = glm::dot(w, normal);
    const float sin2_t = (1.0F - cos_i * cos_i) / (eta * eta);
    if (sin2_t >= 1.0F) return std::nullopt;
    const float cos_t = std::sqrt(1.0F - sin2_t);
    return -w / eta + (cos_i / eta - cos_t) * normal;
}

// What a metal of index n + ik reflects at normal incidence, in air.
inline double conductor_normal_reflectance(double n, double k) {
    return ((n - 1.0) * (n - 1.0) + k * k) / ((n + 1.0) * (n + 1.0) + k * k);
}

// Schlick, "An Inexpensive BRDF Model for Physically-based Rendering", 1994: the power of 5 in it.
inline float schlick_weight(float cos_i) {
    const float rest = 1.0F - cos_i;
    const float squared = rest * rest;
    return squared * squared * rest;
}

}  // namespace understudy
