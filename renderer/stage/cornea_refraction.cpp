#include "stage/cornea_refraction.h"

#include <algorithm>
#include <cmath>

#include "scatter/fresnel.h"

namespace understudy {

namespace {

constexpr double kIndex = kCorneaIndex;
constexpr double kRadius = kCorneaRadius;

// The plane of point, corneal centre and light. Angles are taken at the centre, from the line to the point.
struct Plane {
    double depth = 0.0;     // centre to point
    double distance = 0.0;  // centre to light
    double turn = 0.0;      // from the point to the light, 0 … π
};

// What happens at the place of the cornea an angle away from the line to the point.
struct Crossing {
    double angle = 0.0;
    double inner = 0.0;     // between normal and the way inside
    double outer = 0.0;     // between normal and the way that refraction gives outside
    double to_light = 0.0;  // between normal and the straight line to the light
    double length = 0.0;    // of that line
    double miss() const { return outer - to_light; }
};

Crossing cross(const Plane& plane, double angle) {
    Crossing crossing;
    crossing.angle = angle;
    crossing.inner = std::atan2(plane.depth * std::sin(angle), kRadius - plane.depth * std::cos(angle));
    crossing.outer = std::asin(std::min(1.0, kIndex * std::sin(crossing.inner)));
    const double ahead = plane.distance * std::cos(plane.turn - angle) - kRadius;
    const double aside = plane.distance * std::sin(plane.turn - angle);
    crossing.to_light = std::atan2(aside, ahead);
    crossing.length = std::hypot(ahead, aside);
    return crossing;
}

// Change of the inner angle of incidence for a turn of the way at the point: by the law of sines,
// radius · sin(inner) = depth · sin(angle + inner).
double inner_slope(const Plane& plane, const Crossing& crossing) {
    return plane.depth * std::cos(crossing.angle + crossing.inner) / (kRadius * std::cos(crossing.inner));
}

// The miss grows with the angle, from below zero over the point to above zero over the light or where total reflection
// begins: a bracket that Newton's steps may not leave.
std::optional<Crossing> solve(const Plane& plane) {
    constexpr int kMostSteps = 60;
    constexpr double kExact = 1e-12;  // radians
    double low = 0.0;
    double high = plane.turn;
    // Where the sine of the inner angle is 1 / index: total reflection beyond.
    const double critical = std::asin(1.0 / kIndex);
    if (plane.depth * kIndex > kRadius) {
        high = std::min(high, std::asin(kRadius / (plane.depth * kIndex)) - critical);
    }
    if (cross(plane, high).miss() < 0.0) return std::nullopt;
    double angle = high * 0.5;
    for (int step = 0; step < kMostSteps; ++step) {
        const Crossing crossing = cross(plane, angle);
        const double miss = crossing.miss();
        (miss < 0.0 ? low : high) = angle;
        if (std::abs(miss) < kExact || high - low < kExact) return crossing;
        const double bend = inner_slope(plane, crossing);
        const double outer_grows = kIndex * std::cos(crossing.inner) / std::cos(crossing.outer) * bend / (1.0 - bend);
        const double line_turns = -1.0 - kRadius * std::cos(crossing.to_light) / crossing.length;
        const double next = angle - miss / (outer_grows - line_turns);
        angle = next > low && next < high ? next : 0.5 * (low + high);
    }
    return cross(plane, angle);
}

// Solid angle at the point for each area square to the way at the light.
double spread_of(const Plane& plane, const Crossing& crossing) {
    const double leaving = crossing.angle + crossing.inner;  // of the way inside, from the line of symmetry
    const double bend = inner_slope(plane, crossing);
    const double outer_bend = kIndex * std::cos(crossing.inner) / std::cos(crossing.outer) * bend;
    const double along_sphere = 1.0 - bend;
    const double meridional =
        kRadius * std::cos(crossing.outer) * along_sphere + crossing.length * (along_sphere + outer_bend);
    const double off_line = plane.distance * std::sin(plane.turn);
    constexpr double kOnLine = 1e-9;  // radians: both sines vanish together
    const double sagittal = leaving > kOnLine ? off_line / std::sin(leaving) : meridional;
    return 1.0 / std::abs(sagittal * meridional);
}

}  // namespace

std::optional<BentWay> bent_way(const Eye& eye, const Vec3& point, const Vec3& light) {
    const Double3 centre = cornea_centre(eye);
    const Double3 to_point = Double3(point) - centre;
    const Double3 to_light = Double3(light) - centre;
    Plane plane;
    plane.depth = glm::length(to_point);
    plane.distance = glm::length(to_light);
    const Double3 line = to_point / plane.depth;
    const Double3 aside = to_light - glm::dot(to_light, line) * line;
    const double off_line = glm::length(aside);
    plane.turn = std::atan2(off_line, glm::dot(to_light, line));
    const auto crossing = solve(plane);
    if (!crossing) return std::nullopt;
    const Double3 across = off_line > 0.0 ? aside / off_line : Double3(0.0);
    const Double3 normal = std::cos(crossing->angle) * line + std::sin(crossing->angle) * across;
    const Double3 exit = centre + kRadius * normal;
    if (glm::dot(exit - eye.centre, eye.axis) < kLimbusAhead) return std::nullopt;
    BentWay way;
    way.exit = Vec3(exit);
    way.normal = Vec3(normal);
    way.inside = Vec3(glm::normalize(exit - Double3(point)));
    way.transmittance =
        1.0F - dielectric_fresnel(static_cast<float>(std::cos(crossing->outer)), static_cast<float>(kIndex));
    way.spread = static_cast<float>(spread_of(plane, *crossing));
    return way;
}

}  // namespace understudy
