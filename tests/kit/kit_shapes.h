// Every shape of a modifier, and a front to set it on.
#pragma once

#include <cmath>
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "kit/emitter.h"

namespace understudy {

struct NamedShape {
    std::string name;
    ModifierShape shape;
    std::shared_ptr<const EmissionTable> table = nullptr;
};

// A table with so many knots, its values by share of the way outwards (0 … 1) and angle.
inline std::shared_ptr<const EmissionTable> table_of(const ModifierShape& shape,
                                                     const std::function<double(double, double)>& value,
                                                     double widest = kPiDouble / 2.0) {
    EmissionLayout layout = EmissionLayout::of(shape);
    constexpr std::uint32_t kKnots = 9;
    constexpr int kAngles = 24;
    layout.across = kKnots;
    layout.along = layout.round() ? 1 : kKnots;
    layout.azimuths = layout.round() ? 1 : 16;
    for (int i = 0; i <= kAngles; ++i) layout.angles.push_back(static_cast<float>(widest * i / kAngles));
    std::vector<float> values;
    for (std::uint32_t across = 0; across < layout.across; ++across) {
        for (std::uint32_t along = 0; along < layout.along * layout.azimuths; ++along) {
            for (const float angle : layout.angles) {
                values.push_back(
                    static_cast<float>(value(static_cast<double>(across) / (kKnots - 1), static_cast<double>(angle))));
            }
        }
    }
    return std::make_shared<const EmissionTable>(std::move(layout), std::move(values));
}

// Like a grid's: nothing past its cut-off.
inline double gridded(double angle, double cut_off) {
    return angle < cut_off ? 1.0 - std::tan(angle) / std::tan(cut_off) : 0.0;
}

inline ClothHead head_at(double distance_m) { return {distance_m, 70.0, 0.75}; }

// At least one of every alternative; emitter_sampling_test.cpp checks that none is missing.
inline std::vector<NamedShape> every_shape() {
    return {{"rectangle", RectangleShape{0.6, 0.9}},
            {"strip", RectangleShape{0.3, 1.2}},
            {"disc", DiscShape{0.8}},
            {"ring", RingShape{0.45, 0.3}},
            {"triangle", PolygonShape{3, 0.9}},
            {"hexagon", PolygonShape{6, 0.9}},
            {"octagon", PolygonShape{8, 1.2}},
            {"sphere", SphereShape{0.4}},
            {"bulb", SphereShape{0.06}},
            {"shallow dome", DomeShape{1.0, 0.2}},
            {"half-ball dome", DomeShape{1.0, 0.5}},
            {"white umbrella", UmbrellaShape{1.05, 0.26, UmbrellaShape::Cloth::kWhite, head_at(0.63), 0.18}},
            {"silver umbrella", UmbrellaShape{1.05, 0.26, UmbrellaShape::Cloth::kSilver, head_at(0.63), 0.18}},
            {"shoot-through", UmbrellaShape{1.05, 0.26, UmbrellaShape::Cloth::kThrough, head_at(0.63), 0.18}},
            {"frame", FrameShape{2.0, 2.0, head_at(1.2), 0.5}},
            {"window", WindowShape{1.2, 1.5, 2, 3, 0.05, 0.0, 0.2}},
            {"curtained window", WindowShape{1.2, 1.5, 2, 3, 0.05, 0.6, 0.2}},
            {"gridded box", RectangleShape{0.6, 0.9},
             table_of(
                 RectangleShape{0.6, 0.9}, [](double, double angle) { return gridded(angle, 0.5); }, 0.5)},
            {"hot octagon", PolygonShape{8, 1.2},
             table_of(PolygonShape{8, 1.2},
                      [](double out, double angle) { return std::exp(-5.0 * out * out) * std::cos(angle); })},
            {"dish with a plate", DiscShape{0.55},
             table_of(DiscShape{0.55},
                      [](double out, double angle) { return out < 0.4 ? 0.05 : std::pow(std::cos(angle), 8.0); })},
            {"hot ring", RingShape{0.45, 0.3},
             table_of(RingShape{0.45, 0.3}, [](double out, double angle) { return (2.0 - out) * std::cos(angle); })},
            {"lopsided ball", SphereShape{0.4},
             table_of(SphereShape{0.4}, [](double back, double) { return 1.2 - back; })}};
}

// A front at a place, its axis along a direction, its up as near the studio's as can be.
inline PlacedFront front_at(const Double3& centre, const Double3& toward) {
    const Double3 axis = glm::normalize(toward);
    const Double3 helper = std::abs(axis.y) < 0.9 ? Double3(0.0, 1.0, 0.0) : Double3(0.0, 0.0, -1.0);
    const Double3 right = glm::normalize(glm::cross(helper, axis));
    return {centre, axis, right, glm::cross(axis, right)};
}

// Not square to any axis, so that a swapped one shows.
inline PlacedFront slanted_front() { return front_at({0.3, 1.9, 0.8}, {-0.4, -0.7, -0.9}); }

// Places that the luminous side can light, near and far, on the axis and off it.
inline std::vector<Vec3> receivers_before(const PlacedFront& front) {
    const auto at = [&](double along, double right, double up) {
        return Vec3(front.centre + along * front.axis + right * front.right + up * front.up);
    };
    return {at(1.3, 0.0, 0.0), at(0.9, 0.5, -0.2), at(0.6, -1.0, 0.7), at(3.0, 2.0, 2.0)};
}

}  // namespace understudy
