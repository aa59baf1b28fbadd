// The inside of a modifier as geometry: walls, back and front, and what stands between them.
//
// The front's axes, the front at z = 0 and the back at z = −depth; a ball is centred on the origin. The walls are flat
// (a box) or a quadric of revolution, radius² = a + b z + c z² (cone, bowl, parabola, cylinder, ball). Either way the
// room that they enclose is convex, so from inside they are met once, where the ray leaves them.
#pragma once

#include <optional>
#include <vector>

#include "base/geometry.h"
#include "setup/construction.h"
#include "setup/setup.h"

namespace understudy {

enum class Part { kNone, kWall, kBack, kFront, kDeflector, kInnerCloth, kCore };

struct InteriorHit {
    float distance = kInfinity;
    Part part = Part::kNone;
    Vec3 normal{0.0F};  // unit, toward where the ray came from
};

class Interior {
  public:
    Interior(const Construction& construction, const ModifierShape& front);

    // last: the part that the ray starts from, which what is flat does not meet twice.
    InteriorHit next(const Vec3& origin, const Vec3& direction, Part last) const;
    // Whether nothing stands in between. The walls cannot: the room is convex.
    bool open_between(const Vec3& origin, const Vec3& direction, float distance, Part last) const {
        return inner_distance(origin, direction, last).distance >= distance;
    }

    bool is_ball() const { return ball_; }
    float tube_height() const { return tube_height_; }  // z of the tube's middle

  private:
    struct Wall {
        Vec3 normal;  // outward
        float offset;
    };
    struct Plate {
        Part part;
        float height;
        float radius;  // infinity: to the walls but for the gap
        float gap;
    };
    bool reaches(const Plate& plate, const Vec3& point) const;
    InteriorHit inner_distance(const Vec3& origin, const Vec3& direction, Part last) const;
    float core_distance(const Vec3& origin, const Vec3& direction) const;
    InteriorHit flat_walls(const Vec3& origin, const Vec3& direction) const;
    InteriorHit round_wall(const Vec3& origin, const Vec3& direction) const;
    void build_flat(const Construction& construction, const ModifierShape& front);
    void build_round(const Construction& construction, float front_radius);

    bool ball_ = false;
    float back_ = 0.0F;  // z, below 0
    float tube_height_ = 0.0F;
    std::vector<Wall> walls_;  // empty: round
    float a_ = 0.0F, b_ = 0.0F, c_ = 0.0F;
    std::vector<Plate> plates_;
    float core_radius_ = 0.0F;  // of a ring's inner tube; 0: none
};

}  // namespace understudy
