// Light of an emitter at a receptor by its own samples, one somewhere in each cell of an even grid: a light's guides
// have cells of their own, and the middles of the one would beat with the edges of the other.
#pragma once

#include "kit/emitter.h"
#include "scatter/random_stream.h"

namespace understudy {

struct Irradiance {
    double mean = 0.0;               // ∫ response · L dΩ over what is seen of the front, L over the even radiance
    double relative_variance = 0.0;  // of one sample that is drawn at random
};

inline Irradiance irradiance_of(const Emitter& emitter, const Vec3& receiver, const Vec3& normal, Response response,
                                int side = 800, std::uint32_t seed = 5) {
    const auto density = emitter.density_for(receiver, normal, response);
    if (!density) return {};
    RandomStream random(seed);
    double sum = 0.0;
    double squares = 0.0;
    for (int i = 0; i < side * side; ++i) {
        const auto n = static_cast<float>(side);
        const Vec3 within = random.next3();
        const int row = i / side;
        const Vec2 u((static_cast<float>(i % side) + within.x) / n, (static_cast<float>(row) + within.y) / n);
        const Vec2 square = density->sample(u);
        const EmitterPoint point = emitter.point_at(square, receiver);
        const Vec3 away = point.position - receiver;
        const float distance2 = glm::dot(away, away);
        const Vec3 way = away / std::sqrt(distance2);
        const float facing = -glm::dot(way, point.normal);
        if (facing <= 0.0F) continue;
        // Part of a dome is hidden behind its own rim, or by the head before it.
        if (emitter.blocks({receiver, way, 0.0F, std::sqrt(distance2) * 0.9999F})) continue;
        const float received = response_to(response, glm::dot(way, normal)) * emitter.radiance(point.position, -way) /
                               emitter.even_radiance();
        const auto value = static_cast<double>(received * facing / distance2 * point.area / density->density(square));
        sum += value;
        squares += value * value;
    }
    const double count = static_cast<double>(side) * side;
    const double mean = sum / count;
    return {mean, squares / count / (mean * mean) - 1.0};
}

}  // namespace understudy
