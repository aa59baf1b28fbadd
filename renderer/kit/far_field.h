// What a modifier does at a distance: intensity, illuminance on the axis, the angle it opens to, and how much brighter
// its middle is than its edge. From its table by exact sums over the knots; of an umbrella, a frame or a window, whose
// light is worked out on its real surface, from many of its points.
#pragma once

#include <cmath>
#include <optional>

#include "kit/emission_table.h"
#include "kit/emitter.h"

namespace understudy {

// lm/sr for 1 lm out of the front, in a direction in the front's axes: from far away.
double intensity(const EmissionTable& table, const Vec3& direction);
double intensity(const Emitter& emitter, const Vec3& direction);
// The mean over all directions so far from the axis, radians.
template <class Light>
double mean_intensity(const Light& light, double angle);

// lx for 1 lm out of the front, on a receptor square to the axis and so far before the front's centre.
double axial_illuminance(const EmissionTable& table, double distance_m);
double axial_illuminance(const Emitter& emitter, double distance_m);

// The full angle at whose border the mean intensity is half of the axial one, radians; none when it never is.
template <class Light>
std::optional<double> opening_angle(const Light& light);

// Of the front seen from far away on the axis: stops from the middle to the border's mean. None of a ball.
std::optional<double> hot_spot_stops(const EmissionTable& table);
std::optional<double> hot_spot_stops(const Emitter& emitter);

// Of an emitter that stands in the origin and looks along z.
Emitter emitter_alone(const ModifierShape& shape);

template <class Light>
double mean_intensity(const Light& light, double angle) {
    constexpr int kRound = 12;
    const auto across = static_cast<float>(std::sin(angle));
    const auto along = static_cast<float>(std::cos(angle));
    double sum = 0.0;
    for (int i = 0; i < kRound; ++i) {
        const float turn = 2.0F * kPi * (static_cast<float>(i) + 0.5F) / static_cast<float>(kRound);
        sum += intensity(light, {across * std::cos(turn), across * std::sin(turn), along});
    }
    return sum / kRound;
}

// Round the axis rather than on it: a window's light jumps at the horizon.
template <class Light>
double axial_intensity(const Light& light) {
    return mean_intensity(light, radians(0.25));
}

template <class Light>
std::optional<double> opening_angle(const Light& light) {
    const double half = 0.5 * axial_intensity(light);
    // The first step at which it falls below, then by halving.
    constexpr int kSteps = 90;
    for (int step = 1; step <= kSteps; ++step) {
        double outside = radians(static_cast<double>(step));
        if (mean_intensity(light, outside) > half) continue;
        double inside = radians(step - 1.0);
        for (int i = 0; i < 6; ++i) {
            const double middle = 0.5 * (inside + outside);
            (mean_intensity(light, middle) > half ? inside : outside) = middle;
        }
        return inside + outside;
    }
    return std::nullopt;
}

}  // namespace understudy
