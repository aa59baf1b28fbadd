#include "transport/ways_to_scrims.h"

#include <algorithm>

namespace understudy {

Vec3 WaysToScrims::sample(const Vec3& u) const {
    const auto count = static_cast<float>(faced_.size());
    const std::size_t index = std::min(static_cast<std::size_t>(u.x * count), faced_.size() - 1);
    const Faced& faced = faced_[index];
    const EmitterPoint point = faced.side->point_at(faced.square.sample({u.y, u.z}), receiver_);
    return glm::normalize(point.position - receiver_);
}

bool WaysToScrims::leads_there(const Vec3& direction) const {
    const Ray ray{receiver_, direction};
    return std::any_of(faced_.begin(), faced_.end(), [&](const Faced& faced) { return faced.side->blocks(ray); });
}

float WaysToScrims::density(const Vec3& direction) const {
    float sum = 0.0F;
    const Ray ray{receiver_, direction};
    for (const Faced& faced : faced_) {
        const auto met = faced.side->intersect(ray);
        if (!met) continue;
        const Vec2 place = faced.side->square_of(ray.at(met->distance), receiver_);
        const EmitterPoint point = faced.side->point_at(place, receiver_);
        const float cosine = std::max(std::abs(glm::dot(direction, met->normal)), 1e-9F);
        sum += faced.square.density(place) * met->distance * met->distance / (point.area * cosine);
    }
    return sum / static_cast<float>(faced_.size());
}

}  // namespace understudy
