// What a modifier does at a distance, from its table: intensity, illuminance on the axis, the angle it opens to, and
// how much brighter its middle is than its edge.
#pragma once

#include <optional>

#include "kit/emission_table.h"

namespace understudy {

// lm/sr for 1 lm out of the front, in a direction in the front's axes: from far away.
double intensity(const EmissionTable& table, const Vec3& direction);
// The mean over all directions so far from the axis, radians.
double mean_intensity(const EmissionTable& table, double angle);

// lx for 1 lm out of the front, on a receptor square to the axis and so far before the front's centre.
double axial_illuminance(const EmissionTable& table, double distance_m);

// The full angle at whose border the mean intensity is half of the axial one, radians; none when it never is.
std::optional<double> opening_angle(const EmissionTable& table);

// Of the front seen from far away on the axis: stops from the middle to the border's mean. None of a ball.
std::optional<double> hot_spot_stops(const EmissionTable& table);

}  // namespace understudy
