// Area-preserving maps from the unit square onto flat fronts, and back.
//
// Every map has a constant Jacobian, so a density over the square divided by the front's area is a density over the
// front. The disc goes through the concentric map of Shirley and Chiu, "A Low Distortion Map Between Disk and Square",
// JGT 2(3), 1997: neighbours stay neighbours, which keeps stratified samples stratified and a coarse grid of the square
// meaningful.
#pragma once

#include "base/turns.h"
#include "base/wide.h"

namespace understudy {

// Polar coordinates on the unit disc; area is proportional to radius² · angle. For one point (float) or sixteen (Wide).
template <class Real>
struct PolarPoint {
    Real radius{};  // 0 … 1
    Real angle{};   // radians, −π … π
};
using DiscPoint = PolarPoint<float>;

// The map's four wedges, each with its own radius along one side of the square; ratio: of the way across the wedge, −1
// … 1.
template <class Real>
struct Wedge {
    decltype(Real{} <= Real{}) upright{};
    Real radius{};  // below 0 in the wedges below and to the left
    Real ratio{};
};
template <class Real>
Wedge<Real> wedge_at(const Real& u, const Real& v) {
    const Real across = 2.0F * u - 1.0F;
    const Real up = 2.0F * v - 1.0F;
    const auto upright = size_of(across) <= size_of(up);
    const Real radius = upright ? up : across;
    const Real other = upright ? across : up;
    return {upright, radius, other / (radius == 0.0F ? Real{} + 1.0F : radius)};
}

template <class Real>
PolarPoint<Real> square_to_polar(const Real& u, const Real& v) {
    const auto [upright, radius, ratio] = wedge_at(u, v);
    const Real turn = kPi / 4.0F * ratio;
    const Real top = kPi / 2.0F - turn;
    const Real left = ratio > 0.0F ? turn - kPi : turn + kPi;
    const Real before = upright ? top : turn;
    const Real behind = upright ? top - kPi : left;
    return {size_of(radius), radius < 0.0F ? behind : before};
}
inline DiscPoint square_to_disc(const Vec2& square) { return square_to_polar(square.x, square.y); }
Vec2 disc_to_square(const DiscPoint& point);

// The same point with its direction, a unit vector, instead of its angle; the map's four wedges make that a matter of
// −π/4 … π/4. For one point (float) or sixteen (Wide).
template <class Real>
struct DiscVector {
    Real radius, x, y;
};
template <class Real>
DiscVector<Real> square_to_disc_vector(const Real& u, const Real& v) {
    const auto [upright, radius, ratio] = wedge_at(u, v);
    const CosSin<Real> narrow = narrow_cos_sin(Real{kPi / 4.0F * ratio});
    const Real along = radius < 0.0F ? -narrow.cosine : narrow.cosine;
    const Real aside = radius < 0.0F ? -narrow.sine : narrow.sine;
    return {size_of(radius), upright ? aside : along, upright ? along : aside};
}

}  // namespace understudy
