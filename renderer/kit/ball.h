// A ball: a lamp that shines all round, or something black that stands in the way.
//
// As a lamp it shows each receiver only the cap that faces it, and the unit square is spread over that cap evenly in
// solid angle (Shirley, Wang and Zimmerman, "Monte Carlo Techniques for Direct Lighting Calculations", ACM TOG 15(1),
// 1996): evenly by area, the many points near the edge would all be seen at grazing angles.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "base/geometry.h"
#include "kit/emitter_point.h"

namespace understudy {

class Ball {
  public:
    // any_way: where a receiver in the very middle looks.
    Ball(const Vec3& centre, float radius, const Vec3& any_way) : centre_(centre), radius_(radius), any_way_(any_way) {}

    const Vec3& centre() const { return centre_; }
    float radius() const { return radius_; }
    float area() const { return 4.0F * kPi * radius_ * radius_; }

    EmitterPoint point_at(const Vec2& square, const Vec3& receiver) const;
    // For a point on the cap that the receiver sees.
    Vec2 square_of(const Vec3& point, const Vec3& receiver) const;

    std::optional<EmitterHit> intersect(const Ray& ray) const;
    // Where lines of sight graze it.
    std::vector<Vec3> outline(const Vec3& seen_from, int count) const;

  private:
    Vec3 centre_;
    float radius_;
    Vec3 any_way_;
};

// Both distances at which a line meets a sphere, by the closest approach, which stays exact for small distant spheres.
std::optional<std::array<float, 2>> sphere_distances(const Ray& ray, const Vec3& centre, float radius);

}  // namespace understudy
