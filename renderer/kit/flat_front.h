// A flat luminous front in its own plane: rectangle, disc, ring or regular polygon, centred on the origin.
#pragma once

#include <optional>
#include <vector>

#include "base/wide.h"
#include "kit/square_maps.h"
#include "setup/setup.h"

namespace understudy {

class FlatFront {
  public:
    static FlatFront rectangle(float width, float height);
    static FlatFront ring(float diameter, float inner);  // inner = 0: a disc
    // Corners on a circle of the given diameter, flat sides at top and bottom when sides is a multiple of 4.
    static FlatFront polygon(int sides, float diameter);

    float area() const { return area_; }
    float reach() const;  // the farthest point from the centre

    // Metres in the plane, x right and y up.
    Wide2 points_at(const Wide2& square) const {
        if (kind_ == Kind::kRectangle) return {(square.x - 0.5F) * width_, (square.y - 0.5F) * height_};
        return kind_ == Kind::kRing ? ring_points(square) : polygon_points(square);
    }
    Vec2 point_at(const Vec2& square) const {
        const Wide2 points = points_at({everywhere(square.x), everywhere(square.y)});
        return {points.x[0], points.y[0]};
    }
    Vec2 square_of(const Vec2& point) const;  // point must be contained
    bool contains(const Vec2& point) const {
        if (kind_ == Kind::kRectangle) {
            return std::abs(point.x) <= 0.5F * width_ && std::abs(point.y) <= 0.5F * height_;
        }
        const float r2 = point.x * point.x + point.y * point.y;
        if (r2 > outer_ * outer_) return false;
        if (kind_ == Kind::kRing) return r2 >= inner_ * inner_;
        return r2 <= inner_ * inner_ || wedge_place(point).out <= 1.0F;
    }

    // False only where the point is not contained.
    WideTruth may_contain(const Wide2& point) const {
        if (kind_ == Kind::kRectangle) {
            return (size_of(point.x) <= 0.5F * width_) & (size_of(point.y) <= 0.5F * height_);
        }
        return point.x * point.x + point.y * point.y <= outer_ * outer_;
    }

    // Points round the edge, counter-clockwise.
    std::vector<Vec2> outline(int count) const;

  private:
    enum class Kind { kRectangle, kRing, kPolygon };
    struct WedgePlace {
        float across = 0.0F;  // 0 … 1 along the wedge's side
        float out = 0.0F;     // 0 at the centre, 1 on the side
        int wedge = 0;
    };
    Wide2 ring_points(const Wide2& square) const;
    Wide2 polygon_points(const Wide2& square) const;
    const Vec2& corner(int index) const { return corners_[static_cast<std::size_t>(index)]; }
    WedgePlace wedge_place(const Vec2& point) const;

    Kind kind_ = Kind::kRectangle;
    float width_ = 0.0F;
    float height_ = 0.0F;
    float outer_ = 0.0F;  // radius
    float inner_ = 0.0F;  // radius: of the hole, or of the circle that a polygon's sides touch from outside
    int sides_ = 0;
    std::vector<Vec2> corners_;  // of a polygon, the first again at the end
    float area_ = 0.0F;
};

// False only for rays that miss a flat front put up in the studio.
inline WideTruth may_meet_flat(const WideRays& rays, const FlatFront& front, const Vec3& centre, const Vec3& axis,
                               const Vec3& right, const Vec3& up) {
    const Wide distance = dot(centre - rays.origin, axis) / dot(rays.direction, axis);
    const Wide3 away = rays.at(distance) - centre;
    return (distance > rays.near) & (distance < rays.far) & front.may_contain({dot(away, right), dot(away, up)});
}

// False only for rays that miss a ball.
inline WideTruth may_meet_ball(const WideRays& rays, const Vec3& centre, float radius) {
    const Wide3 toward = centre - rays.origin;
    const Wide along = dot(toward, rays.direction);
    const Wide3 aside = toward - along * rays.direction;
    const Wide inside = radius * radius - dot(aside, aside);
    const Wide half = square_root(larger(inside, Wide{}));
    return (inside >= 0.0F) & (along + half > rays.near) & (along - half < rays.far);
}

}  // namespace understudy
