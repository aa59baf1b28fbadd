// Flat things that only reflect: panels, the straight parts of a backdrop, walls. And the sweep between wall and floor.
#pragma once

#include <algorithm>
#include <optional>
#include <vector>

#include "base/geometry.h"
#include "kit/flat_front.h"
#include "setup/placement.h"
#include "setup/setup.h"

namespace understudy {

struct BoardHit {
    float distance = 0.0F;
    Vec3 normal{0.0F};  // either side
};

// A flat piece that reflects on both sides.
class Board {
  public:
    Board(const PlacedFront& front, FlatFront shape);
    Board(const PlacedFront& front, double width_m, double height_m);  // a rectangle
    std::optional<BoardHit> intersect(const Ray& ray) const {
        const float distance = distance_to(ray);
        if (distance == kInfinity) return std::nullopt;
        return BoardHit{distance, axis_};
    }
    bool blocks(const Ray& ray) const { return distance_to(ray) < kInfinity; }
    // False only for rays that miss it.
    WideTruth may_meet(const WideRays& rays) const { return may_meet_flat(rays, shape_, centre_, axis_, right_, up_); }

    const Vec3& centre() const { return centre_; }
    const Vec3& axis() const { return axis_; }
    float area() const { return shape_.area(); }
    Vec3 point_at(const Vec2& square) const;
    std::vector<Vec3> outline(int count) const;

  private:
    // Infinity when it is missed.
    float distance_to(const Ray& ray) const {
        const float slope = glm::dot(ray.direction, axis_);
        const float height = glm::dot(centre_ - ray.origin, axis_);
        if (!(slope * height > 0.0F)) return kInfinity;
        const float distance = height / slope;
        if (distance <= ray.near || distance >= ray.far) return kInfinity;
        const Vec3 away = ray.at(distance) - centre_;
        return shape_.contains({glm::dot(away, right_), glm::dot(away, up_)}) ? distance : kInfinity;
    }
    Vec3 to_studio(const Vec2& plane) const { return centre_ + plane.x * right_ + plane.y * up_; }

    Vec3 centre_, axis_, right_, up_;
    FlatFront shape_;
};

// A quarter of a cylinder along x that joins an upright backdrop to the floor.
struct Sweep {
    float wall_z = 0.0F;
    float radius = 0.0F;
    float half_width = 0.0F;

    std::optional<BoardHit> intersect(const Ray& ray) const;
    bool blocks(const Ray& ray) const { return intersect(ray).has_value(); }
    // False only for rays that miss it: most never come as far back and down as the sweep reaches.
    WideTruth may_meet(const WideRays& rays) const {
        const Wide last_y = rays.origin.y + rays.far * rays.direction.y;
        const Wide last_z = rays.origin.z + rays.far * rays.direction.z;
        const WideTruth above = (rays.origin.y > radius) & (last_y > radius);
        const WideTruth before = (rays.origin.z > wall_z + radius) & (last_z > wall_z + radius);
        return ~(above | before);
    }
};

struct BackdropShape {
    std::vector<Board> boards;
    std::optional<Sweep> sweep;
};
BackdropShape backdrop_shape(const BackdropSettings& settings);

// Floor, ceiling and four walls, the mark in the middle of the floor.
inline constexpr std::size_t kFloorBoard = 0;
inline constexpr std::size_t kCeilingBoard = 1;
std::vector<Board> room_walls(const Double3& size_m);

}  // namespace understudy
