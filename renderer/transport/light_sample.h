// A point of a light, chosen for a receiver.
#pragma once

#include <algorithm>
#include <optional>

#include "kit/emitter.h"
#include "stage/stage.h"

namespace understudy {

struct Receiver {
    Vec3 position;
    Vec3 normal;
    Response response;
};

// Shadow rays stop short of the light's own surface.
inline constexpr float kShort = 1e-4F;

inline Ray shadow_ray(const Vec3& from, const Vec3& to) {
    const Vec3 away = to - from;
    const float distance = glm::length(away);
    return {from, away / distance, 0.0F, distance * (1.0F - kShort)};
}

struct LightSample {
    Vec3 point{0.0F};
    Vec3 direction{0.0F};  // unit, from the receiver
    float distance = 0.0F;
    float density = 0.0F;   // per unit solid angle at the receiver
    float radiance = 0.0F;  // of the light toward the receiver, per lumen: 1/(sr·m²)

    // From a place on the way to the point.
    Ray shadow_ray(const Vec3& from) const { return understudy::shadow_ray(from, point); }
    // From the receiver itself.
    Ray shadow_ray_from_receiver(const Vec3& receiver) const {
        return {receiver, direction, 0.0F, distance * (1.0F - kShort)};
    }
};

// None when the sampled point turns its dark side to the receiver, or nothing of the light can reach it.
// Always inlined: as a call it would hand its result over in memory.
[[gnu::always_inline]] inline std::optional<LightSample> sample_light(const Emitter& emitter, const Receiver& receiver,
                                                                      const Vec2& u) {
    const auto square = emitter.density_for(receiver.position, receiver.normal, receiver.response);
    if (!square) return std::nullopt;
    const Vec2 place = square->sample(u);
    const EmitterPoint point = emitter.point_at(place, receiver.position);
    const Vec3 away = point.position - receiver.position;
    const float distance2 = glm::dot(away, away);
    const float distance = std::sqrt(distance2);
    const Vec3 direction = away * (1.0F / distance);
    const float cosine = -glm::dot(direction, point.normal);
    if (!(cosine > 0.0F)) return std::nullopt;
    return LightSample{point.position, direction, distance, square->density(place) * distance2 / (point.area * cosine),
                       emitter.radiance(point.position, -direction)};
}

// The density with which sample_light would have chosen the direction of this hit.
inline float light_density(const Emitter& emitter, const Receiver& receiver, const Hit& hit) {
    const auto square = emitter.density_for(receiver.position, receiver.normal, receiver.response);
    if (!square) return 0.0F;
    const Vec2 place = emitter.square_of(hit.position, receiver.position);
    const EmitterPoint point = emitter.point_at(place, receiver.position);
    const Vec3 away = hit.position - receiver.position;
    const float distance2 = glm::dot(away, away);
    const float cosine = std::abs(glm::dot(away, hit.geometric)) / std::sqrt(distance2);
    return square->density(place) * distance2 / (point.area * std::max(cosine, 1e-9F));
}

}  // namespace understudy
