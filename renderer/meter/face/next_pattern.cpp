#include "meter/face/next_pattern.h"

#include <algorithm>
#include <cmath>
#include <functional>

#include "meter/face/light_pattern.h"

namespace understudy {

namespace {

constexpr double kFarthestDeg = 75.0;
constexpr double kStepDeg = 5.0;
constexpr double kNearEnoughDeg = 0.5;
constexpr double kHighestDeg = 89.0;   // over the face's level
constexpr double kLeastHeight = 0.10;  // of the light's middle over the floor

// The light by its place round the face, the studio's upright axis up.
struct Arc {
    Double3 face;
    double distance;
    double round;  // radians from the camera's side
    double elevation;

    Double3 at(double swing_deg, double lift_deg) const {
        const double r = round + radians(swing_deg);
        const double e = elevation + radians(lift_deg);
        return face + distance * Double3(std::cos(e) * std::sin(r), std::sin(e), std::cos(e) * std::cos(r));
    }
};

Arc arc_of(const Double3& face, const Double3& light) {
    const Double3 away = light - face;
    return {face, glm::length(away), std::atan2(away.x, away.z), std::atan2(away.y, std::hypot(away.x, away.z))};
}

struct Change {
    double degrees;
    LightPattern pattern;
};

using PatternAt = std::function<std::optional<LightPattern>(double)>;

std::optional<Change> first_change(const PatternAt& pattern_at, LightPattern now, double sign, double farthest) {
    for (double turn = kStepDeg; turn <= farthest; turn += kStepDeg) {
        auto there = pattern_at(sign * turn);
        if (!there) return std::nullopt;
        if (*there == now) continue;
        double same = turn - kStepDeg;
        double other = turn;
        while (other - same > kNearEnoughDeg) {
            const double middle = 0.5 * (same + other);
            const auto found = pattern_at(sign * middle);
            const bool changed = found && *found != now;
            if (changed) there = found;
            (changed ? other : same) = middle;
        }
        return Change{sign * other, *there};
    }
    return std::nullopt;
}

}  // namespace

std::vector<NextPattern> next_patterns(const Stage& stage, const FaceView& view, const Double3& light,
                                       LightPattern pattern) {
    const Arc arc = arc_of(view.face().frame.origin, light);
    const auto pattern_of = [&](const Double3& place) -> std::optional<LightPattern> {
        if (place.y < kLeastHeight) return std::nullopt;
        const auto reading = read_pattern(stage, view, Vec3(place));
        return reading ? std::optional(reading->pattern) : std::nullopt;
    };
    std::vector<NextPattern> next;
    for (const double sign : {-1.0, 1.0}) {
        const auto swung =
            first_change([&](double turn) { return pattern_of(arc.at(turn, 0.0)); }, pattern, sign, kFarthestDeg);
        if (swung) next.push_back({swung->pattern, swung->degrees, 0.0});
        const double room = sign > 0.0 ? kHighestDeg - degrees(arc.elevation) : kFarthestDeg;
        const auto raised =
            first_change([&](double turn) { return pattern_of(arc.at(0.0, turn)); }, pattern, sign, room);
        if (raised) next.push_back({raised->pattern, 0.0, arc.at(0.0, raised->degrees).y - light.y});
    }
    return next;
}

}  // namespace understudy
