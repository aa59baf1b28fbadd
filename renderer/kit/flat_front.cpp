#include "kit/flat_front.h"

#include <algorithm>

namespace understudy {

FlatFront FlatFront::rectangle(float width, float height) {
    FlatFront front;
    front.kind_ = Kind::kRectangle;
    front.width_ = width;
    front.height_ = height;
    front.area_ = width * height;
    return front;
}

FlatFront FlatFront::ring(float diameter, float inner) {
    FlatFront front;
    front.kind_ = Kind::kRing;
    front.outer_ = 0.5F * diameter;
    front.inner_ = 0.5F * inner;
    front.area_ = kPi * (front.outer_ * front.outer_ - front.inner_ * front.inner_);
    return front;
}

FlatFront FlatFront::polygon(int sides, float diameter) {
    FlatFront front;
    front.kind_ = Kind::kPolygon;
    front.sides_ = sides;
    front.outer_ = 0.5F * diameter;
    const auto n = static_cast<float>(sides);
    front.area_ = 0.5F * n * front.outer_ * front.outer_ * std::sin(2.0F * kPi / n);
    // A hair smaller than it is: what lies so near a side is looked at closely.
    front.inner_ = 0.9999F * front.outer_ * std::cos(kPi / n);
    for (int i = 0; i <= sides; ++i) {
        // Wedge 0 begins half a side past the upright, so that a side lies at the top.
        const float angle = kPi / 2.0F + 2.0F * kPi * (static_cast<float>(i) + 0.5F) / n;
        front.corners_.push_back(front.outer_ * Vec2(std::cos(angle), std::sin(angle)));
    }
    return front;
}

float FlatFront::reach() const { return kind_ == Kind::kRectangle ? 0.5F * std::hypot(width_, height_) : outer_; }

FlatFront::WedgePlace FlatFront::wedge_place(const Vec2& point) const {
    const auto n = static_cast<float>(sides_);
    float turns = (std::atan2(point.y, point.x) - kPi / 2.0F) / (2.0F * kPi) - 0.5F / n;
    turns -= std::floor(turns);
    const int wedge = std::min(static_cast<int>(turns * n), sides_ - 1);
    const Vec2 a = corner(wedge);
    const Vec2 b = corner(wedge + 1);
    // point = p·a + q·b
    const float determinant = a.x * b.y - a.y * b.x;
    const float p = (point.x * b.y - point.y * b.x) / determinant;
    const float q = (a.x * point.y - a.y * point.x) / determinant;
    const float out = p + q;
    return {out > 0.0F ? std::clamp(q / out, 0.0F, 1.0F) : 0.0F, out, wedge};
}

Wide2 FlatFront::ring_points(const Wide2& square) const {
    const DiscVector<Wide> disc = square_to_disc_vector(square.x, square.y);
    const float inner2 = inner_ * inner_;
    const Wide radius = square_root(inner2 + disc.radius * disc.radius * (outer_ * outer_ - inner2));
    return {radius * disc.x, radius * disc.y};
}

// Each wedge of the disc becomes the triangle of equal share: radius² and angle are both uniform in area.
Wide2 FlatFront::polygon_points(const Wide2& square) const {
    const PolarPoint<Wide> disc = square_to_polar(square.x, square.y);
    const Wide place = (disc.angle + kPi) * (0.5F / kPi * static_cast<float>(sides_));
    WideTruth wedge = __builtin_convertvector(place, WideTruth);
    wedge = smaller(wedge, WideTruth{} + (sides_ - 1));
    const Wide across = place - __builtin_convertvector(wedge, Wide);
    Wide2 from, to;
    for (std::size_t lane = 0; lane < kLanes; ++lane) {
        const Vec2& a = corner(wedge[lane]);
        const Vec2& b = corner(wedge[lane] + 1);
        from.x[lane] = a.x;
        from.y[lane] = a.y;
        to.x[lane] = b.x;
        to.y[lane] = b.y;
    }
    return {disc.radius * (from.x + across * (to.x - from.x)), disc.radius * (from.y + across * (to.y - from.y))};
}

Vec2 FlatFront::square_of(const Vec2& point) const {
    if (kind_ == Kind::kRectangle) return {point.x / width_ + 0.5F, point.y / height_ + 0.5F};
    if (kind_ == Kind::kRing) {
        const float r2 = point.x * point.x + point.y * point.y;
        const float share = (r2 - inner_ * inner_) / (outer_ * outer_ - inner_ * inner_);
        return disc_to_square({std::sqrt(std::clamp(share, 0.0F, 1.0F)), std::atan2(point.y, point.x)});
    }
    const WedgePlace place = wedge_place(point);
    const float turns = (static_cast<float>(place.wedge) + place.across) / static_cast<float>(sides_);
    return disc_to_square({std::clamp(place.out, 0.0F, 1.0F), turns * 2.0F * kPi - kPi});
}

std::vector<Vec2> FlatFront::outline(int count) const {
    std::vector<Vec2> points;
    points.reserve(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) {
        // Once round the border of the unit square: the maps keep the border on the border.
        const float t = 4.0F * static_cast<float>(i) / static_cast<float>(count);
        const float s = t - std::floor(t);
        const int side = static_cast<int>(t);
        const Vec2 square = side == 0   ? Vec2(s, 0.0F)
                            : side == 1 ? Vec2(1.0F, s)
                            : side == 2 ? Vec2(1.0F - s, 1.0F)
                                        : Vec2(0.0F, 1.0F - s);
        points.push_back(point_at(square));
    }
    return points;
}

}  // namespace understudy
