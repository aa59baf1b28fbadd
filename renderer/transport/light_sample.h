// A point of a light, chosen for a receiver.
#pragma once

#include <algorithm>
#include <optional>
#include <vector>

#include "kit/emitter.h"
#include "stage/stage.h"
#include "transport/dimensions.h"
#include "transport/path_light.h"
#include "transport/sampler.h"

namespace understudy {

struct Receiver {
    Vec3 position;
    Vec3 normal;
    Response response;
};

// Shadow rays stop short of the light's own surface.
inline constexpr float kStopsShort = 1e-4F;

inline Ray shadow_ray(const Vec3& from, const Vec3& to) {
    const Vec3 away = to - from;
    const float distance = glm::length(away);
    return {from, away / distance, 0.0F, distance * (1.0F - kStopsShort)};
}

struct LightSample {
    Vec3 point{0.0F};
    Vec3 direction{0.0F};  // unit, from the receiver
    float distance = 0.0F;
    float density = 0.0F;   // per unit solid angle at the receiver
    float radiance = 0.0F;  // of the light toward the receiver, per lumen: 1/(sr·m²)

    // From a place on the way to the point.
    Ray shadow_ray(const Vec3& from) const { return understudy::shadow_ray(from, point); }
};

// Sixteen of them.
struct WideLightSamples {
    Wide3 point, direction;
    Wide distance, density;
    WideTruth lit;  // not set when the point turns its dark side to the receiver, or nothing of the light can reach it

    // From the receivers themselves.
    WideRays shadow_rays(const WideReceivers& receivers) const {
        return {receivers.position, direction, Wide{}, distance * (1.0F - kStopsShort)};
    }
    LightSample one(std::size_t lane, const Emitter& emitter) const {
        const Vec3 at = point[lane];
        const Vec3 toward = direction[lane];
        return {at, toward, distance[lane], density[lane], emitter.radiance(at, -toward)};
    }
};

inline WideLightSamples sample_light(const Emitter& emitter, const WideReceivers& receivers, const Wide2& u) {
    const WideSquareDensity square = emitter.density_for(receivers);
    const Wide2 place = square.density.sample(u);
    const WideEmitterPoints points = emitter.points_at(place, receivers.position);
    const Wide3 away = points.position - receivers.position;
    const Wide distance2 = dot(away, away);
    const Wide distance = square_root(distance2);
    const Wide3 direction = 1.0F / distance * away;
    const Wide cosine = -dot(direction, points.normal);
    return {points.position, direction, distance, square.density.density(place) * distance2 / (points.area * cosine),
            square.lit & (cosine > 0.0F)};
}

// For one receiver.
inline std::optional<LightSample> sample_light(const Emitter& emitter, const Receiver& receiver, const Vec2& u) {
    const WideReceivers receivers{Wide3(receiver.position), Wide3(receiver.normal), receiver.response};
    const WideLightSamples samples = sample_light(emitter, receivers, Wide2{everywhere(u.x), everywhere(u.y)});
    if (samples.lit[0] == 0) return std::nullopt;
    return samples.one(0, emitter);
}

// Up to sixteen receivers, each at a vertex of a path of its own.
class LightSampling {
  public:
    void add(const Receiver& receiver, const Sampler& sampler, std::uint32_t vertex) {
        receivers_.position.set(count_, receiver.position);
        receivers_.normal.set(count_, receiver.normal);
        receivers_.response = receiver.response;
        sampler_.set(count_, sampler, dimension_of_lights(vertex, 0));
        ++count_;
    }
    std::size_t count() const { return count_; }
    const WideReceivers& receivers() const { return receivers_; }

    // One stratified sample of every light that is asked for, for each receiver; visit(light, samples, lanes) with the
    // lanes that it can reach.
    template <class Visitor>
    void sample_lights(const std::vector<Emitter>& emitters, LayerBits asked, const Visitor& visit) const {
        if (count_ == 0) return;
        std::array<Wide, 4> numbers{};
        for (std::size_t i = 0; i < emitters.size(); ++i) {
            // Two lights share a group of numbers.
            if (i % 2 == 0 && (asked >> i & 3U) != 0) numbers = sampler_.numbers(static_cast<std::uint32_t>(i / 2));
            if ((asked >> i & 1U) == 0) continue;
            const Wide2 u = i % 2 == 0 ? Wide2{numbers[0], numbers[1]} : Wide2{numbers[2], numbers[3]};
            const WideLightSamples samples = sample_light(emitters[i], receivers_, u);
            const LaneBits lit = lanes_of(samples.lit) & first_lanes(count_);
            if (lit != 0) visit(i, samples, lit);
        }
    }

  private:
    WideReceivers receivers_;
    WideSampler sampler_;
    std::size_t count_ = 0;
};

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
