#include "kit/emission_sampling.h"

#include <algorithm>
#include <numeric>

namespace understudy {

namespace {

// A place keeps at least this part of the mean, so that none that shines only sideways has density 0.
constexpr float kLeastPlace = 0.05F;

// A direction by its parts across the front, in steps over a square of some reach; z < 0: none.
Vec3 direction_at(std::size_t x, std::size_t y, std::size_t side, float reach) {
    const auto part = [&](std::size_t i) {
        return reach * (2.0F * (static_cast<float>(i) + 0.5F) / static_cast<float>(side) - 1.0F);
    };
    const float right = part(x);
    const float up = part(y);
    const float rest = 1.0F - right * right - up * up;
    return {right, up, rest > 0.0F ? std::sqrt(rest) : -1.0F};
}

// Light through an equal step of the direction's parts: radiance · cosine, an even step being dω cos θ to the axis.
float light_in(const UnevenSurface& surface, const UnevenSurface::Point& point, const Vec3& direction) {
    constexpr float kGrazing = 0.05F;
    if (direction.z < 0.0F) return 0.0F;
    const float cosine = glm::dot(direction, point.normal);
    if (cosine <= 0.0F) return 0.0F;
    return surface.radiance(point.place, direction) * cosine / std::max(direction.z, kGrazing);
}

Vec2 middle_of(std::size_t x, std::size_t y, std::size_t side) {
    return (Vec2(static_cast<float>(x), static_cast<float>(y)) + 0.5F) / static_cast<float>(side);
}

// The half side of the square of directions that holds nearly all light, found by looking closer and closer.
float reach_of_light(const UnevenSurface& surface) {
    constexpr std::size_t kDirections = 16;
    constexpr std::size_t kPlaces = 8;
    constexpr double kNearlyAll = 0.99;
    float reach = 1.0F;
    for (int look = 0; look < 5; ++look) {
        std::array<double, kDirections / 2> frames{};  // from the middle outwards
        for (std::size_t p = 0; p < kPlaces * kPlaces; ++p) {
            const UnevenSurface::Point point = surface.point_at(middle_of(p % kPlaces, p / kPlaces, kPlaces));
            for (std::size_t d = 0; d < kDirections * kDirections; ++d) {
                const auto off = [](std::size_t i) {
                    return i >= kDirections / 2 ? i - kDirections / 2 : kDirections / 2 - 1 - i;
                };
                const Vec3 direction = direction_at(d % kDirections, d / kDirections, kDirections, reach);
                frames[std::max(off(d % kDirections), off(d / kDirections))] +=
                    static_cast<double>(light_in(surface, point, direction));
            }
        }
        const double all = std::accumulate(frames.begin(), frames.end(), 0.0);
        double sum = 0.0;
        std::size_t frame = 0;
        while (frame < frames.size() && sum < kNearlyAll * all) sum += frames[frame++];
        const float smaller = reach * static_cast<float>(std::max<std::size_t>(frame, 1)) / (kDirections / 2);
        if (smaller > 0.6F * reach) return smaller;
        reach = smaller;
    }
    return reach;
}

PlaceWarp warp_by_light(const UnevenSurface& surface, float reach) {
    // Each cell by four places, so that one which shines in part is not taken for a dark one.
    constexpr std::size_t kPlaces = 2 * PlaceWarp::kSide;
    constexpr std::size_t kDirections = 8;
    std::vector<float> weights(PlaceWarp::kSide * PlaceWarp::kSide, 0.0F);
    for (std::size_t p = 0; p < kPlaces * kPlaces; ++p) {
        const UnevenSurface::Point point = surface.point_at(middle_of(p % kPlaces, p / kPlaces, kPlaces));
        float& weight = weights[p / kPlaces / 2 * PlaceWarp::kSide + p % kPlaces / 2];
        for (std::size_t d = 0; d < kDirections * kDirections; ++d) {
            weight += light_in(surface, point, direction_at(d % kDirections, d / kDirections, kDirections, reach));
        }
    }
    const float all = std::accumulate(weights.begin(), weights.end(), 0.0F);
    const float least = all > 0.0F ? kLeastPlace * all / static_cast<float>(weights.size()) : 1.0F;
    for (float& weight : weights) weight = std::max(weight, least);
    return PlaceWarp(weights);
}

// How much a place counts for each point of the 3 × 3 grid: linear between them.
std::array<float, 9> hats(const Vec2& square) {
    const auto along = [](float x) {
        return std::array<float, 3>{std::max(0.0F, 1.0F - 2.0F * x), 1.0F - std::abs(2.0F * x - 1.0F),
                                    std::max(0.0F, 2.0F * x - 1.0F)};
    };
    const auto x = along(square.x);
    const auto y = along(square.y);
    std::array<float, 9> result{};
    for (std::size_t i = 0; i < 9; ++i) result[i] = x[i % 3] * y[i / 3];
    return result;
}

}  // namespace

EmissionSampling::EmissionSampling(const UnevenSurface& surface) : EmissionSampling(surface, reach_of_light(surface)) {}

EmissionSampling::EmissionSampling(const UnevenSurface& surface, float reach)
    : warp_(warp_by_light(surface, reach)), scale_(1.0F / reach), rough_(kSide * kSide * kStride, 0.0F) {
    constexpr std::size_t kPlaces = 16;
    std::array<float, 9> counted{};
    for (std::size_t p = 0; p < kPlaces * kPlaces; ++p) {
        const Vec2 even = middle_of(p % kPlaces, p / kPlaces, kPlaces);
        const PlaceWarp::Place place = warp_.at(even);
        const UnevenSurface::Point point = surface.point_at(place.square);
        const std::array<float, 9> shares = hats(even);
        for (std::size_t k = 0; k < 9; ++k) counted[k] += shares[k];
        for (std::size_t d = 0; d < kSide * kSide; ++d) {
            const Vec3 direction = direction_at(d % kSide, d / kSide, kSide, reach);
            if (direction.z < 0.0F) continue;
            const float radiance = place.stretch * surface.radiance(point.place, direction);
            for (std::size_t k = 0; k < 9; ++k) rough_[d * kStride + k] += shares[k] * radiance;
        }
    }
    for (std::size_t i = 0; i < rough_.size(); ++i) rough_[i] /= counted[i % kStride];
}

}  // namespace understudy
