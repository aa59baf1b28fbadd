#include "kit/ball.h"

#include <algorithm>
#include <array>

#include "kit/square_maps.h"

namespace understudy {

namespace {

// The cone in which a receiver sees a ball; from a place inside the ball, half of all directions.
struct Cone {
    float distance;  // receiver to the ball's centre
    float depth;     // 1 − cosine of the half angle
    Frame frame;     // its normal from the receiver to the centre

    Cone(const Vec3& receiver, const Vec3& centre, float radius, const Vec3& any_way) {
        const Vec3 toward = centre - receiver;
        const float real_distance = glm::length(toward);
        distance = std::max(real_distance, radius);
        const float sine2 = std::min(1.0F, radius * radius / (distance * distance));
        depth = sine2 / (1.0F + std::sqrt(1.0F - sine2));
        frame = Frame::around(real_distance > 0.0F ? toward / real_distance : any_way);
    }
    float solid_angle() const { return 2.0F * kPi * depth; }
};

}  // namespace

EmitterPoint Ball::point_at(const Vec2& square, const Vec3& receiver) const {
    const Cone cone(receiver, centre_, radius_, any_way_);
    const DiscVector<float> disc = square_to_disc_vector(square.x, square.y);
    const float sunk = cone.depth * disc.radius * disc.radius;
    const float cosine = 1.0F - sunk;
    const float sine2 = sunk * (2.0F - sunk);
    const float half_chord = std::sqrt(std::max(0.0F, radius_ * radius_ - cone.distance * cone.distance * sine2));
    // In forms that do not cancel for a small ball far away.
    const float distance = cone.distance * cosine - half_chord;
    const float toward_receiver = cone.distance * sine2 + half_chord * cosine;
    const float aside = distance * std::sqrt(sine2);
    const Vec3 normal = glm::normalize(cone.frame.to_world({aside * disc.x, aside * disc.y, -toward_receiver}));
    constexpr float kLeastCosine = 1e-4F;  // one sample in 10⁸ lies nearer to the edge
    const float facing = std::max(half_chord / radius_, kLeastCosine);
    return {centre_ + radius_ * normal, normal, cone.solid_angle() * distance * distance / facing};
}

Vec2 Ball::square_of(const Vec3& point, const Vec3& receiver) const {
    const Cone cone(receiver, centre_, radius_, any_way_);
    const Vec3 local = glm::normalize(cone.frame.to_local(point - receiver));
    const float sine2 = local.x * local.x + local.y * local.y;
    const float sunk = local.z > 0.0F ? sine2 / (1.0F + local.z) : 1.0F;
    return disc_to_square({std::sqrt(std::min(1.0F, sunk / cone.depth)), std::atan2(local.y, local.x)});
}

std::optional<std::array<float, 2>> sphere_distances(const Ray& ray, const Vec3& centre, float radius) {
    const Vec3 toward = centre - ray.origin;
    const float along = glm::dot(toward, ray.direction);
    const Vec3 aside = toward - along * ray.direction;
    const float inside = radius * radius - glm::dot(aside, aside);
    if (inside < 0.0F) return std::nullopt;
    const float half = std::sqrt(inside);
    return std::array<float, 2>{along - half, along + half};
}

std::optional<EmitterHit> Ball::intersect(const Ray& ray) const {
    const auto distances = sphere_distances(ray, centre_, radius_);
    if (!distances) return std::nullopt;
    for (const float distance : *distances) {
        if (distance <= ray.near || distance >= ray.far) continue;
        const Vec3 normal = (ray.at(distance) - centre_) / radius_;
        return EmitterHit{distance, normal, glm::dot(normal, ray.direction) < 0.0F};
    }
    return std::nullopt;
}

std::vector<Vec3> Ball::outline(const Vec3& seen_from, int count) const {
    std::vector<Vec3> points;
    points.reserve(static_cast<std::size_t>(count));
    const Vec3 toward = seen_from - centre_;
    const float distance = glm::length(toward);
    const float cosine = std::min(1.0F, radius_ / distance);
    const float sine = std::sqrt(1.0F - cosine * cosine);
    const Frame frame = Frame::around(toward / distance);
    for (int i = 0; i < count; ++i) {
        const float angle = 2.0F * kPi * static_cast<float>(i) / static_cast<float>(count);
        points.push_back(centre_ + radius_ * frame.to_world({sine * std::cos(angle), sine * std::sin(angle), cosine}));
    }
    return points;
}

}  // namespace understudy
