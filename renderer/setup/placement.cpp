#include "setup/placement.h"

#include <cmath>

#include <fmt/format.h>

#include "setup/problem_log.h"

namespace understudy {
namespace {

// Height of the stand above the face's, for a distance.
double rise_over_face(const StandPlacement& stand, const Double3& face) {
    if (stand.elevation_deg) {
        return stand.distance_m * std::sin(radians(*stand.elevation_deg));
    }
    return stand.height_m ? *stand.height_m - face.y : 0.0;
}

// The direction that the front's height runs along before any roll: as near to the world's up as the axis lets it.
// An axis straight down is one that was tilted down from facing the backdrop, so its up is −z; straight up, +z.
Double3 upright(const Double3& axis) {
    const Double3 across = Double3(0.0, 1.0, 0.0) - axis.y * axis;
    if (glm::length(across) < 1e-6) {
        const Double3 reference(0.0, 0.0, axis.y > 0.0 ? 1.0 : -1.0);
        return glm::normalize(reference - glm::dot(reference, axis) * axis);
    }
    return glm::normalize(across);
}

// Counterclockwise as seen with pole toward the viewer (Rodrigues, 1840; the vector is square to the pole).
Double3 turned(const Double3& v, const Double3& pole, double angle_rad) {
    return std::cos(angle_rad) * v + std::sin(angle_rad) * glm::cross(pole, v);
}

// +1 if a turn round up, counterclockwise from above, brings the axis nearer to the camera. With the camera on neither
// side (a light above it, or behind the sitter) positive is toward camera right.
double sense_toward_camera(const Double3& axis, const Double3& up, const Double3& centre, const Double3& camera) {
    const Double3 sideways = glm::cross(up, axis);
    const Double3 to_camera = camera - centre;
    const double lean = glm::dot(sideways, to_camera);
    if (std::abs(lean) > 1e-9 * (1.0 + glm::length(to_camera))) {
        return lean > 0.0 ? 1.0 : -1.0;
    }
    return sideways.x >= 0.0 ? 1.0 : -1.0;
}

Double3 aim_point(const Aim& aim, const StudioPoints& points) {
    switch (aim.target) {
        case Aim::Target::kFace:
        case Aim::Target::kEyes:  // the face point is midway between the eyes
            return points.face;
        case Aim::Target::kChest:
            return points.chest;
        case Aim::Target::kCrown:
            return points.crown;
        case Aim::Target::kBackdrop:
            return points.backdrop;
        case Aim::Target::kCamera:
            return points.camera;
        case Aim::Target::kPoint:
            return aim.point_m;
    }
    return points.face;
}

Problem unreachable(const StandPlacement& stand, double clear_m) {
    // clear_m: how far the stand's plumb line at this angle passes from the face at least, level with the stand.
    const double level = stand.elevation_deg ? std::cos(radians(*stand.elevation_deg)) : 1.0;
    const std::string where = stand.elevation_deg ? fmt::format("elevation {:.4g} degrees", *stand.elevation_deg)
                                                  : fmt::format("height {:.4g} m", stand.height_m.value_or(0.0));
    const std::string what = fmt::format("{} at angle {:.4g} degrees cannot be reached from {:.4g} m away", where,
                                         stand.angle_deg, stand.distance_m);
    if (level < 1e-9) {
        return problem_at(stand.said_at, what + "; expected a smaller elevation: no distance reaches this one");
    }
    return problem_at(stand.said_at, fmt::format("{}; expected a distance of at least {:.4g} m", what,
                                                 std::ceil(clear_m / level * 1000.0 - 1e-6) / 1000.0));
}

}  // namespace

// The stand is at (r sin a, h, r cos a), r metres from the mark; the face is at z metres before it:
// r² − 2 r z cos a + z² + (h − y)² = d². The larger root is the one on the angle's side.
Expected<Double3> stand_position(const StandPlacement& stand, const Double3& face) {
    const double angle = radians(stand.angle_deg);
    const double rise = rise_over_face(stand, face);
    // Written for any face; a straight head's is at x = 0.
    const double along = face.x * std::sin(angle) + face.z * std::cos(angle);
    const double square_off = face.x * face.x + face.z * face.z + rise * rise - stand.distance_m * stand.distance_m;
    double discriminant = along * along - square_off;
    if (std::abs(discriminant) < 1e-12) {
        discriminant = 0.0;  // exactly at the limit but for rounding
    }
    const double radius = discriminant < 0.0 ? -1.0 : along + std::sqrt(discriminant);
    if (radius < -1e-9) {
        const double nearest = std::max(0.0, along);
        const double level_sq = nearest * nearest - 2.0 * nearest * along + face.x * face.x + face.z * face.z;
        const double clear = std::sqrt(std::max(0.0, level_sq) + (stand.elevation_deg ? 0.0 : rise * rise));
        StandPlacement said = stand;
        if (!said.height_m && !said.elevation_deg) {
            said.height_m = face.y;
        }
        return unreachable(said, clear);
    }
    const double r = std::max(0.0, radius);
    return Double3(r * std::sin(angle), face.y + rise, r * std::cos(angle));
}

Expected<PlacedFront> place_front(const Placement& placement, const StudioPoints& points) {
    PlacedFront front;
    if (const StandPlacement* stand = std::get_if<StandPlacement>(&placement.where)) {
        const Expected<Double3> position = stand_position(*stand, points.face);
        if (!position) {
            return position.problems();
        }
        front.centre = *position;
    } else {
        front.centre = std::get<Double3>(placement.where);
    }
    const Double3 toward = aim_point(placement.aim, points) - front.centre;
    if (glm::length(toward) < 1e-6) {
        return problem_at(placement.said_at, "the aim is where the thing itself stands; expected an aim elsewhere");
    }
    const Double3 straight = glm::normalize(toward);
    const Double3 up = upright(straight);
    const double feather =
        sense_toward_camera(straight, up, front.centre, points.camera) * radians(placement.feather_deg);
    front.axis = glm::normalize(turned(straight, up, feather));
    const Double3 right = glm::cross(up, front.axis);
    front.up = turned(up, front.axis, radians(placement.roll_deg));
    front.right = turned(right, front.axis, radians(placement.roll_deg));
    return front;
}

}  // namespace understudy
