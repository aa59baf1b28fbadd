#include "stage/eye_optics.h"

#include <array>
#include <cmath>

#include "scatter/fresnel.h"

namespace understudy {

namespace {

struct Meeting {
    double distance = 0.0;
    Double3 point{0.0};  // relative to the eyeball's centre
};

// Both meetings of a line with a sphere, by the closest approach.
std::optional<std::array<double, 2>> meet(const Double3& origin, const Double3& direction, const Double3& centre,
                                          double radius) {
    const Double3 toward = centre - origin;
    const double along = glm::dot(toward, direction);
    const Double3 aside = toward - along * direction;
    const double inside = radius * radius - glm::dot(aside, aside);
    if (inside < 0.0) return std::nullopt;
    const double half = std::sqrt(inside);
    return std::array<double, 2>{along - half, along + half};
}

}  // namespace

std::optional<EyeHit> intersect_eye(const Eye& eye, const Ray& ray) {
    const Double3 origin = Double3(ray.origin) - eye.centre;
    const Double3 direction(ray.direction);
    std::optional<EyeHit> first;
    const auto consider = [&](const Double3& centre, double radius, bool cornea) {
        const auto distances = meet(origin, direction, centre, radius);
        if (!distances) return;
        for (const double distance : *distances) {
            if (distance <= static_cast<double>(ray.near) || distance >= static_cast<double>(ray.far)) continue;
            const Double3 point = origin + distance * direction;
            if ((glm::dot(point, eye.axis) >= kLimbusAhead) != cornea) continue;
            if (!first || static_cast<float>(distance) < first->distance) {
                first = EyeHit{static_cast<float>(distance), Vec3((point - centre) / radius), cornea};
            }
            return;
        }
    };
    consider(Double3(0.0), kEyeballRadius, false);
    consider(kCorneaCentreAhead * eye.axis, kCorneaRadius, true);
    return first;
}

std::optional<IrisHit> reach_iris(const Eye& eye, const Vec3& inside, const Vec3& direction) {
    const Double3 origin = Double3(inside) - eye.centre;
    const Double3 way(direction);
    const double sinking = glm::dot(way, eye.axis);
    if (sinking >= 0.0) return std::nullopt;
    const double to_plane = (kIrisAhead - glm::dot(origin, eye.axis)) / sinking;
    const Double3 point = origin + to_plane * way;
    const Double3 across = point - kIrisAhead * eye.axis;
    const double radius = glm::length(across);
    if (radius <= kIrisRadius) {
        return IrisHit{Vec3(eye.centre + point), Vec3(eye.axis), static_cast<float>(radius), true};
    }
    // The rim is a cylinder round the axis; origin lies inside it.
    const Double3 flat_origin = origin - glm::dot(origin, eye.axis) * eye.axis;
    const Double3 flat_way = way - sinking * eye.axis;
    const double a = glm::dot(flat_way, flat_way);
    const double b = glm::dot(flat_origin, flat_way);
    const double c = std::min(0.0, glm::dot(flat_origin, flat_origin) - kIrisRadius * kIrisRadius);
    const double distance = (-b + std::sqrt(b * b - a * c)) / a;
    const Double3 rim = origin + distance * way;
    if (glm::dot(rim, eye.axis) > kLimbusAhead) return std::nullopt;
    const Double3 out = rim - glm::dot(rim, eye.axis) * eye.axis;
    return IrisHit{Vec3(eye.centre + rim), Vec3(-out / kIrisRadius), static_cast<float>(kIrisRadius), false};
}

std::optional<WayOut> leave_through_cornea(const Eye& eye, const Vec3& iris, const Vec3& direction) {
    const Double3 origin = Double3(iris) - eye.centre;
    const Double3 way(direction);
    const Double3 centre = kCorneaCentreAhead * eye.axis;
    const auto distances = meet(origin, way, centre, kCorneaRadius);
    if (!distances || (*distances)[1] <= 0.0) return std::nullopt;
    const Double3 exit = origin + (*distances)[1] * way;
    if (glm::dot(exit, eye.axis) < kLimbusAhead) return std::nullopt;
    const Double3 normal = (exit - centre) / kCorneaRadius;
    const auto cosine = static_cast<float>(glm::dot(normal, way));
    return WayOut{Vec3(eye.centre + exit), Vec3(normal),
                  1.0F - dielectric_fresnel(cosine, static_cast<float>(kCorneaIndex))};
}

}  // namespace understudy
