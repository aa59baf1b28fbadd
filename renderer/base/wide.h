// Sixteen numbers side by side, one for each of sixteen paths: what many paths do alike is written once and done for
// all of them together. g++ and Clang's vectors: one register with AVX-512, several with less.
//
// A formula written for a Real serves one path (float) and sixteen (Wide) if it chooses by ?: and not by branches.
#pragma once

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <cstdint>

#ifdef __AVX512F__
#include <immintrin.h>
#endif

#include "base/geometry.h"

namespace understudy {

inline constexpr std::size_t kLanes = 16;
using Wide = float __attribute__((vector_size(4 * kLanes)));
using WideBits = std::uint32_t __attribute__((vector_size(4 * kLanes)));
// What comparing gives: all bits set where it is true.
using WideTruth = std::int32_t __attribute__((vector_size(4 * kLanes)));

inline Wide everywhere(float value) { return Wide{} + value; }

inline float square_root(float x) { return std::sqrt(x); }
inline Wide square_root(const Wide& x) {
#ifdef __AVX512F__
    return _mm512_maskz_sqrt_ps(0xFFFF, x);
#else
    Wide result{};
    for (std::size_t i = 0; i < kLanes; ++i) result[i] = std::sqrt(x[i]);
    return result;
#endif
}

template <class Real>
Real smaller(const Real& a, const Real& b) {
    return a < b ? a : b;
}
template <class Real>
Real larger(const Real& a, const Real& b) {
    return a > b ? a : b;
}
template <class Real>
Real size_of(const Real& x) {
    return x < 0.0F ? -x : x;
}

struct Wide2 {
    Wide x{}, y{};
};

struct Wide3 {
    Wide x{}, y{}, z{};

    Wide3() = default;
    Wide3(const Wide& a, const Wide& b, const Wide& c) : x(a), y(b), z(c) {}
    explicit Wide3(const Vec3& v) : x(everywhere(v.x)), y(everywhere(v.y)), z(everywhere(v.z)) {}

    void set(std::size_t lane, const Vec3& v) {
        x[lane] = v.x;
        y[lane] = v.y;
        z[lane] = v.z;
    }
    Vec3 operator[](std::size_t lane) const { return {x[lane], y[lane], z[lane]}; }
};

inline Wide3 operator+(const Wide3& a, const Wide3& b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
inline Wide3 operator-(const Wide3& a, const Wide3& b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
inline Wide3 operator-(const Wide3& a) { return {-a.x, -a.y, -a.z}; }
inline Wide3 operator*(const Wide& s, const Wide3& v) { return {s * v.x, s * v.y, s * v.z}; }
inline Wide3 operator*(const Wide& s, const Vec3& v) { return {s * v.x, s * v.y, s * v.z}; }
inline Wide3 operator+(const Wide3& a, const Vec3& b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
inline Wide3 operator+(const Vec3& a, const Wide3& b) { return b + a; }
inline Wide3 operator-(const Wide3& a, const Vec3& b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
inline Wide3 operator-(const Vec3& a, const Wide3& b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
inline Wide dot(const Wide3& a, const Wide3& b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
inline Wide dot(const Wide3& a, const Vec3& b) { return a.x * b.x + a.y * b.y + a.z * b.z; }

// The lanes where something is true: lane i's is bit i.
using LaneBits = std::uint32_t;
inline LaneBits lanes_of(const WideTruth& truth) {
#ifdef __AVX512DQ__
    return _mm512_movepi32_mask(reinterpret_cast<__m512i>(truth));
#else
    LaneBits bits = 0;
    for (std::size_t i = 0; i < kLanes; ++i) bits |= truth[i] != 0 ? 1U << i : 0U;
    return bits;
#endif
}
inline LaneBits first_lanes(std::size_t count) { return (1U << count) - 1U; }
template <class Visitor>
void for_each_lane(LaneBits lanes, const Visitor& visit) {
    for (; lanes != 0; lanes &= lanes - 1U) visit(static_cast<std::size_t>(std::countr_zero(lanes)));
}

// Sixteen by sixteen: visit(first, count).
template <class Visitor>
void for_lanes(std::size_t all, const Visitor& visit) {
    for (std::size_t first = 0; first < all; first += kLanes) visit(first, std::min(kLanes, all - first));
}

struct WideRays {
    Wide3 origin, direction;
    Wide near{}, far{};

    void set(std::size_t lane, const Ray& ray) {
        origin.set(lane, ray.origin);
        direction.set(lane, ray.direction);
        near[lane] = ray.near;
        far[lane] = ray.far;
    }
    Ray operator[](std::size_t lane) const { return {origin[lane], direction[lane], near[lane], far[lane]}; }
    Wide3 at(const Wide& distance) const { return origin + distance * direction; }
};

// Of unit normals: Frame::around, sixteen at a time.
struct WideFrame {
    Wide3 tangent, bitangent, normal;

    static WideFrame around(const Wide3& n) {
        const Wide sign = n.z < 0.0F ? everywhere(-1.0F) : everywhere(1.0F);
        const Wide a = -1.0F / (sign + n.z);
        const Wide b = n.x * n.y * a;
        return {{1.0F + sign * n.x * n.x * a, sign * b, -sign * n.x}, {b, sign + n.y * n.y * a, -n.y}, n};
    }
    Wide3 to_world(const Wide3& v) const { return v.x * tangent + v.y * bitangent + v.z * normal; }
};

}  // namespace understudy
