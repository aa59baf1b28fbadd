#include "kit/interior.h"

#include <algorithm>
#include <cmath>

namespace understudy {

namespace {

float metres(double value) { return static_cast<float>(value); }

float front_radius_of(const ModifierShape& front) {
    if (const auto* disc = std::get_if<DiscShape>(&front)) return metres(0.5 * disc->diameter_m);
    if (const auto* ring = std::get_if<RingShape>(&front)) return metres(0.5 * ring->diameter_m);
    if (const auto* sphere = std::get_if<SphereShape>(&front)) return metres(0.5 * sphere->diameter_m);
    return 0.0F;
}

}  // namespace

Interior::Interior(const Construction& construction, const ModifierShape& front) {
    using Body = Construction::Body;
    ball_ = construction.body == Body::kBall;
    back_ = -metres(construction.depth_m);
    tube_height_ = back_ + metres(construction.tube.before_back_m);
    if (construction.body == Body::kBox) {
        build_flat(construction, front);
    } else {
        build_round(construction, front_radius_of(front));
    }
    if (construction.body == Body::kRing) core_radius_ = metres(0.5 * std::get<RingShape>(front).inner_m);
    if (construction.deflector) {
        plates_.push_back({Part::kDeflector, back_ + metres(construction.deflector->before_back_m),
                           metres(0.5 * construction.deflector->diameter_m), 0.0F});
    }
    if (construction.inner_cloth) {
        plates_.push_back({Part::kInnerCloth, -metres(construction.inner_cloth->behind_front_m), kInfinity,
                           metres(construction.inner_cloth->gap_m)});
    }
}

void Interior::build_flat(const Construction& construction, const ModifierShape& front) {
    // A wall through a straight edge of the front and the parallel edge of the back.
    const float depth = -back_;
    const auto add = [&](const Vec2& outward, float front_out, float back_out) {
        const Vec3 normal = glm::normalize(Vec3(depth * outward, -(front_out - back_out)));
        walls_.push_back({normal, glm::dot(normal, Vec3(front_out * outward, 0.0F))});
    };
    const float back = metres(0.5 * construction.back_diameter_m);
    if (const auto* rectangle = std::get_if<RectangleShape>(&front)) {
        const float x = metres(0.5 * rectangle->width_m);
        const float y = metres(0.5 * rectangle->height_m);
        add({1.0F, 0.0F}, x, std::min(back, x));
        add({-1.0F, 0.0F}, x, std::min(back, x));
        add({0.0F, 1.0F}, y, std::min(back, y));
        add({0.0F, -1.0F}, y, std::min(back, y));
        return;
    }
    const auto& polygon = std::get<PolygonShape>(front);
    const float out = metres(0.5 * polygon.diameter_m * std::cos(kPiDouble / polygon.sides));
    for (int side = 0; side < polygon.sides; ++side) {
        const float turn = 2.0F * kPi * static_cast<float>(side) / static_cast<float>(polygon.sides);
        add({std::sin(turn), std::cos(turn)}, out, std::min(back, out));
    }
}

void Interior::build_round(const Construction& construction, float front_radius) {
    using Body = Construction::Body;
    const float back_radius = metres(0.5 * construction.back_diameter_m);
    const float front2 = front_radius * front_radius;
    a_ = front2;
    if (construction.body == Body::kBall) {
        c_ = -1.0F;
    } else if (construction.body == Body::kCone) {
        const float slope = (front_radius - back_radius) / -back_;
        b_ = 2.0F * front_radius * slope;
        c_ = slope * slope;
    } else if (construction.body != Body::kRing) {
        // A paraboloid: of a parabola it ends in its vertex.
        const float back2 = construction.body == Body::kParabola ? 0.0F : back_radius * back_radius;
        b_ = (front2 - back2) / -back_;
    }
}

InteriorHit Interior::flat_walls(const Vec3& origin, const Vec3& direction) const {
    InteriorHit hit;
    for (const Wall& wall : walls_) {
        const float slope = glm::dot(wall.normal, direction);
        if (slope <= 0.0F) continue;
        const float distance = std::max(0.0F, (wall.offset - glm::dot(wall.normal, origin)) / slope);
        if (distance < hit.distance) hit = {distance, Part::kWall, -wall.normal};
    }
    return hit;
}

InteriorHit Interior::round_wall(const Vec3& origin, const Vec3& direction) const {
    // x² + y² − a − b z − c z² along the ray: second t² + 2 half t + first, not above 0 at its start.
    const float second = direction.x * direction.x + direction.y * direction.y - c_ * direction.z * direction.z;
    const float half =
        origin.x * direction.x + origin.y * direction.y - 0.5F * b_ * direction.z - c_ * origin.z * direction.z;
    const float first =
        std::min(0.0F, origin.x * origin.x + origin.y * origin.y - a_ - b_ * origin.z - c_ * origin.z * origin.z);
    const float root = std::sqrt(std::max(0.0F, half * half - second * first));
    if (half <= 0.0F && second <= 0.0F) return {};
    // In the form that does not cancel.
    const float distance = half > 0.0F ? -first / (half + root) : (root - half) / second;
    const Vec3 point = origin + distance * direction;
    return {distance, Part::kWall, -glm::normalize(Vec3(point.x, point.y, -0.5F * b_ - c_ * point.z))};
}

float Interior::core_distance(const Vec3& origin, const Vec3& direction) const {
    const float second = direction.x * direction.x + direction.y * direction.y;
    const float half = origin.x * direction.x + origin.y * direction.y;
    const float first = origin.x * origin.x + origin.y * origin.y - core_radius_ * core_radius_;
    const float inside = half * half - second * first;
    if (half >= 0.0F || inside <= 0.0F) return kInfinity;
    return std::max(0.0F, first / (-half + std::sqrt(inside)));
}

bool Interior::reaches(const Plate& plate, const Vec3& point) const {
    const float radius2 = point.x * point.x + point.y * point.y;
    if (plate.radius < kInfinity) return radius2 <= plate.radius * plate.radius;
    if (plate.gap <= 0.0F) return true;
    for (const Wall& wall : walls_) {
        if (glm::dot(wall.normal, point) > wall.offset - plate.gap) return false;
    }
    if (!walls_.empty()) return true;
    const float wall_radius = std::sqrt(std::max(0.0F, a_ + b_ * point.z + c_ * point.z * point.z));
    return std::sqrt(radius2) <= wall_radius - plate.gap;
}

InteriorHit Interior::inner_distance(const Vec3& origin, const Vec3& direction, Part last) const {
    InteriorHit hit;
    for (const Plate& plate : plates_) {
        if (plate.part == last) continue;
        const float distance = (plate.height - origin.z) / direction.z;
        if (!(distance > 0.0F && distance < hit.distance)) continue;
        if (!reaches(plate, origin + distance * direction)) continue;
        hit = {distance, plate.part, Vec3(0.0F, 0.0F, direction.z > 0.0F ? -1.0F : 1.0F)};
    }
    if (core_radius_ > 0.0F && last != Part::kCore) {
        const float distance = core_distance(origin, direction);
        if (distance < hit.distance) {
            const Vec3 point = origin + distance * direction;
            hit = {distance, Part::kCore, glm::normalize(Vec3(point.x, point.y, 0.0F))};
        }
    }
    return hit;
}

InteriorHit Interior::next(const Vec3& origin, const Vec3& direction, Part last) const {
    InteriorHit hit = walls_.empty() ? round_wall(origin, direction) : flat_walls(origin, direction);
    if (!ball_) {
        const bool outward = direction.z > 0.0F;
        const float distance = std::max(0.0F, ((outward ? 0.0F : back_) - origin.z) / direction.z);
        if (distance < hit.distance) {
            hit = {distance, outward ? Part::kFront : Part::kBack, Vec3(0.0F, 0.0F, outward ? -1.0F : 1.0F)};
        }
    }
    const InteriorHit inner = inner_distance(origin, direction, last);
    return inner.distance < hit.distance ? inner : hit;
}

}  // namespace understudy
