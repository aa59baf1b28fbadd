// The far field of what is no table: from points spread over the luminous surface.
#include "kit/far_field.h"

namespace understudy {

namespace {

constexpr int kPointsAcross = 32;
const Vec3 kAxis(0.0F, 0.0F, 1.0F);

// visit(point) for points spread evenly over the surface, each with its share of the area.
template <class Visitor>
void each_point(const Emitter& emitter, const Vec3& receiver, const Visitor& visit) {
    constexpr float kCells = kPointsAcross;
    for (int i = 0; i < kPointsAcross; ++i) {
        for (int j = 0; j < kPointsAcross; ++j) {
            const Vec2 square((static_cast<float>(i) + 0.5F) / kCells, (static_cast<float>(j) + 0.5F) / kCells);
            EmitterPoint point = emitter.even_point(square, receiver);
            point.area /= kCells * kCells;
            visit(point);
        }
    }
}

}  // namespace

Emitter emitter_alone(const ModifierShape& shape) {
    return {shape, PlacedFront{{0.0, 0.0, 0.0}, {0.0, 0.0, 1.0}, {1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}}};
}

double intensity(const Emitter& emitter, const Vec3& direction) {
    constexpr float kFar = 1000.0F;  // metres
    double sum = 0.0;
    each_point(emitter, kFar * direction, [&](const EmitterPoint& point) {
        const float cosine = glm::dot(point.normal, direction);
        if (cosine <= 0.0F) return;
        sum += static_cast<double>(point.area * cosine * emitter.radiance(point.position, direction));
    });
    return sum;
}

double axial_illuminance(const Emitter& emitter, double distance_m) {
    const Vec3 receptor(0.0F, 0.0F, static_cast<float>(distance_m));
    double sum = 0.0;
    each_point(emitter, receptor, [&](const EmitterPoint& point) {
        const Vec3 away = receptor - point.position;
        const float distance2 = glm::dot(away, away);
        const Vec3 direction = away / std::sqrt(distance2);
        const float cosine = glm::dot(point.normal, direction);
        if (cosine <= 0.0F || direction.z <= 0.0F) return;
        sum += static_cast<double>(point.area * cosine * direction.z * emitter.radiance(point.position, direction) /
                                   distance2);
    });
    return sum;
}

std::optional<double> hot_spot_stops(const Emitter& emitter) {
    // The outermost points of the surface against those round its middle, as seen from far away on the axis.
    constexpr float kFar = 1000.0F;  // metres
    constexpr float kMiddle = 0.1F;
    constexpr float kRim = 0.95F;
    float reach = 0.0F;
    each_point(emitter, kFar * kAxis, [&](const EmitterPoint& point) {
        reach = std::max(reach, std::hypot(point.position.x, point.position.y));
    });
    double middle = 0.0;
    double middle_area = 0.0;
    double rim = 0.0;
    double rim_area = 0.0;
    each_point(emitter, kFar * kAxis, [&](const EmitterPoint& point) {
        const float off = std::hypot(point.position.x, point.position.y) / reach;
        const auto light = static_cast<double>(point.area * emitter.radiance(point.position, kAxis));
        if (off < kMiddle) {
            middle += light;
            middle_area += static_cast<double>(point.area);
        }
        if (off > kRim) {
            rim += light;
            rim_area += static_cast<double>(point.area);
        }
    });
    if (!(middle > 0.0 && rim > 0.0)) return std::nullopt;
    return std::log2(middle / middle_area / (rim / rim_area));
}

}  // namespace understudy
