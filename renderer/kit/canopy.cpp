#include "kit/canopy.h"

#include <algorithm>
#include <array>

#include "kit/ball.h"

namespace understudy {

Canopy::Canopy(const Vec3& rim_middle, const Vec3& pole, const Vec3& right, const Vec3& up, float rim_radius,
               float depth, Shines shines)
    : rim_middle_(rim_middle),
      pole_(pole),
      right_(right),
      up_(up),
      radius_((rim_radius * rim_radius + depth * depth) / (2.0F * depth)),
      depth_(depth),
      shines_(shines) {
    sphere_centre_ = rim_middle_ - (radius_ - depth_) * pole_;
}

EmitterPoint Canopy::point_at(const Vec2& square, const Vec3& receiver) const {
    const DiscVector<float> disc = square_to_disc_vector(square.x, square.y);
    const float sunk = depth_ * disc.radius * disc.radius;  // below the canopy's middle
    const float across = std::sqrt(std::max(0.0F, sunk * (2.0F * radius_ - sunk)));
    const Vec3 position = sphere_centre_ + (radius_ - sunk) * pole_ + across * disc.x * right_ + across * disc.y * up_;
    const Vec3 inside = inward(position);
    const bool outer = shines_ == Shines::kBothSides && glm::dot(receiver - position, inside) < 0.0F;
    return {position, outer ? -inside : inside, area()};
}

Vec2 Canopy::square_of(const Vec3& point) const {
    const float sunk = radius_ - glm::dot(point - sphere_centre_, pole_);
    const Vec3 away = point - rim_middle_;
    const float angle = std::atan2(glm::dot(away, up_), glm::dot(away, right_));
    return disc_to_square({std::sqrt(std::clamp(sunk / depth_, 0.0F, 1.0F)), angle});
}

std::optional<EmitterHit> Canopy::intersect(const Ray& ray) const {
    const auto distances = sphere_distances(ray, sphere_centre_, radius_);
    if (!distances) return std::nullopt;
    for (const float distance : *distances) {
        if (distance <= ray.near || distance >= ray.far) continue;
        const Vec3 point = ray.at(distance);
        if (glm::dot(point - rim_middle_, pole_) < 0.0F) continue;  // the part of the sphere that is no canopy
        const Vec3 inside = inward(point);
        const bool seen_inside = glm::dot(inside, ray.direction) < 0.0F;
        if (shines_ == Shines::kInside) return EmitterHit{distance, inside, seen_inside};
        return EmitterHit{distance, seen_inside ? inside : -inside, true};
    }
    return std::nullopt;
}

}  // namespace understudy
