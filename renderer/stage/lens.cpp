#include "stage/lens.h"

#include <cmath>

#include "scatter/glass_pane.h"

namespace understudy {

namespace {

// Of the middle of the cap from which all of it is nearest.
Double3 vertex(const SpectacleLens& place) { return place.centre + place.radius_m * place.axis; }

// How far the outline's corners are from the vertex, with a hair to spare.
double reach(const SpectacleLens& place) {
    const double aside = std::hypot(place.half_width_m, place.half_height_m);
    const double sag = place.radius_m - std::sqrt(std::max(0.0, place.radius_m * place.radius_m - aside * aside));
    return std::hypot(aside, sag) + 1e-4;
}

bool in_outline(const SpectacleLens& place, const Double3& away) {
    const double x = std::abs(glm::dot(away, place.right)) / place.half_width_m;
    const double y = std::abs(glm::dot(away, place.up)) / place.half_height_m;
    return std::pow(x, place.roundness) + std::pow(y, place.roundness) <= 1.0;
}

}  // namespace

Lens::Lens(const SpectacleLens& place, LensCoating coating)
    : place_(place), coating_(coating), middle_(vertex(place)), reach_(static_cast<float>(reach(place))) {}

std::optional<LensHit> Lens::intersect(const Ray& ray) const {
    // Relative to the centre, in double precision: the cap is a small part of its sphere.
    const Double3 origin = Double3(ray.origin) - place_.centre;
    const Double3 way(ray.direction);
    const double along = -glm::dot(origin, way);
    const Double3 nearest = origin + along * way;
    const double inside = place_.radius_m * place_.radius_m - glm::dot(nearest, nearest);
    if (inside < 0.0) return std::nullopt;
    const double half = std::sqrt(inside);
    for (const double distance : {along - half, along + half}) {
        if (distance <= static_cast<double>(ray.near) || distance >= static_cast<double>(ray.far)) continue;
        const Double3 point = origin + distance * way;
        if (glm::dot(point, place_.axis) <= 0.0 || !in_outline(place_, point)) continue;
        return LensHit{static_cast<float>(distance), Vec3(point / place_.radius_m)};
    }
    return std::nullopt;
}

float Lens::mirrors(float cosine) const {
    if (coating_ == LensCoating::kPlain) return plain_pane_reflectance(cosine, kSpectacleIndex);
    return coated_pane_reflectance(cosine, kSpectacleIndex, kCoatedFace);
}

float Lens::passes(const Ray& ray) const {
    const auto met = intersect(ray);
    if (!met) return 1.0F;
    return 1.0F - mirrors(std::min(1.0F, std::abs(glm::dot(ray.direction, met->normal))));
}

}  // namespace understudy
