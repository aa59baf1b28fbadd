// The surface of an umbrella: a cap of a sphere, thin, that shines from its hollow side or from both.
//
// Along the axis equal depths are equal areas (Archimedes), so the unit square is spread evenly.
#pragma once

#include <optional>

#include "base/geometry.h"
#include "kit/emitter_point.h"
#include "kit/square_maps.h"

namespace understudy {

class Canopy {
  public:
    enum class Shines { kInside, kBothSides };

    Canopy() = default;
    // pole: unit, from the middle of the rim's plane to the canopy's own middle. right and up: across it.
    Canopy(const Vec3& rim_middle, const Vec3& pole, const Vec3& right, const Vec3& up, float rim_radius, float depth,
           Shines shines);

    float area() const { return 2.0F * kPi * radius_ * depth_; }
    float sphere_radius() const { return radius_; }
    float depth() const { return depth_; }
    const Vec3& sphere_centre() const { return sphere_centre_; }
    const Vec3& rim_middle() const { return rim_middle_; }
    const Vec3& pole() const { return pole_; }

    // Its normal on the side that the receiver sees, if both shine.
    EmitterPoint point_at(const Vec2& square, const Vec3& receiver) const;
    Vec2 square_of(const Vec3& point) const;
    Vec3 inward(const Vec3& point) const { return (sphere_centre_ - point) / radius_; }
    std::optional<EmitterHit> intersect(const Ray& ray) const;

  private:
    Vec3 rim_middle_{0.0F};
    Vec3 pole_{0.0F, 0.0F, -1.0F};
    Vec3 right_{1.0F, 0.0F, 0.0F};
    Vec3 up_{0.0F, 1.0F, 0.0F};
    Vec3 sphere_centre_{0.0F};
    float radius_ = 1.0F;  // of the sphere that it is cut from
    float depth_ = 0.5F;
    Shines shines_ = Shines::kInside;
};

}  // namespace understudy
