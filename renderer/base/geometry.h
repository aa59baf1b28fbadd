// Vectors, rays and local frames: right-handed, metres, y up.
#pragma once

#include <cmath>
#include <limits>

#include <glm/geometric.hpp>
#include <glm/vec2.hpp>
#include <glm/vec3.hpp>
#include <glm/vec4.hpp>

namespace understudy {

using Vec2 = glm::vec2;
using Vec3 = glm::vec3;
using Vec4 = glm::vec4;
using Double3 = glm::dvec3;

inline constexpr float kPi = 3.14159265358979323846F;
inline constexpr double kPiDouble = 3.14159265358979323846;
inline constexpr float kInfinity = std::numeric_limits<float>::infinity();

inline constexpr double radians(double degrees) { return degrees * (kPiDouble / 180.0); }
inline constexpr double degrees(double radians) { return radians * (180.0 / kPiDouble); }

// From 0 to 1 with level ends; outside, the nearer end's value.
inline constexpr double smooth_step(double t) {
    const double inside = t < 0.0 ? 0.0 : (t > 1.0 ? 1.0 : t);
    return inside * inside * (3.0 - 2.0 * inside);
}

// direction has length 1; the ray covers the distances (near, far) along it.
struct Ray {
    Vec3 origin{0.0F};
    Vec3 direction{0.0F, 0.0F, 1.0F};
    float near = 0.0F;
    float far = kInfinity;

    Vec3 at(float distance) const { return origin + distance * direction; }
};

// An orthonormal basis round a unit normal.
struct Frame {
    Vec3 tangent;
    Vec3 bitangent;
    Vec3 normal;

    // Duff and others, "Building an Orthonormal Basis, Revisited", JCGT 6(1), 2017.
    static Frame around(const Vec3& n) {
        const float sign = std::copysign(1.0F, n.z);
        const float a = -1.0F / (sign + n.z);
        const float b = n.x * n.y * a;
        return {Vec3(1.0F + sign * n.x * n.x * a, sign * b, -sign * n.x), Vec3(b, sign + n.y * n.y * a, -n.y), n};
    }

    Vec3 to_world(const Vec3& v) const { return v.x * tangent + v.y * bitangent + v.z * normal; }
    Vec3 to_local(const Vec3& v) const { return {glm::dot(v, tangent), glm::dot(v, bitangent), glm::dot(v, normal)}; }
};

}  // namespace understudy
