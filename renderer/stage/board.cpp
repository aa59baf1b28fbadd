#include "stage/board.h"

#include <algorithm>
#include <array>
#include <utility>

namespace understudy {

namespace {

// The sweep of a paper roll, and how far it runs out toward the camera from the mark: common practice, no source.
constexpr double kSweepRadius = 0.4;
constexpr double kFloorAhead = 1.5;

PlacedFront facing(const Double3& centre, const Double3& axis, const Double3& up) {
    return {centre, axis, glm::cross(up, axis), up};
}

}  // namespace

Board::Board(const PlacedFront& front, FlatFront shape)
    : centre_(front.centre), axis_(front.axis), right_(front.right), up_(front.up), shape_(std::move(shape)) {}

Board::Board(const PlacedFront& front, double width_m, double height_m)
    : Board(front, FlatFront::rectangle(static_cast<float>(width_m), static_cast<float>(height_m))) {}

Vec3 Board::point_at(const Vec2& square) const { return to_studio(shape_.point_at(square)); }

std::vector<Vec3> Board::outline(int count) const {
    std::vector<Vec3> points;
    for (const Vec2& point : shape_.outline(count)) points.push_back(to_studio(point));
    return points;
}

std::optional<BoardHit> Sweep::intersect(const Ray& ray) const {
    // About the cylinder's axis, in the y–z plane.
    const Vec2 centre(radius, wall_z + radius);  // y, z
    const Vec2 origin = Vec2(ray.origin.y, ray.origin.z) - centre;
    const Vec2 way(ray.direction.y, ray.direction.z);
    const float a = glm::dot(way, way);
    const float b = glm::dot(origin, way);
    const float c = glm::dot(origin, origin) - radius * radius;
    const float discriminant = b * b - a * c;
    if (a == 0.0F || discriminant < 0.0F) return std::nullopt;
    const float root = std::sqrt(discriminant);
    for (const float distance : {(-b - root) / a, (-b + root) / a}) {
        if (distance <= ray.near || distance >= ray.far) continue;
        const Vec3 point = ray.at(distance);
        if (point.y > radius || point.z > wall_z + radius || std::abs(point.x) > half_width) continue;
        return BoardHit{distance, Vec3(0.0F, radius - point.y, wall_z + radius - point.z) / radius};
    }
    return std::nullopt;
}

BackdropShape backdrop_shape(const BackdropSettings& settings) {
    const double radius = settings.floor ? std::min({kSweepRadius, settings.height_m, settings.distance_m}) : 0.0;
    const double wall_z = -settings.distance_m;
    const double height = settings.height_m - radius;
    BackdropShape shape;
    if (height > 0.0) {
        shape.boards.emplace_back(facing({0.0, radius + 0.5 * height, wall_z}, {0.0, 0.0, 1.0}, {0.0, 1.0, 0.0}),
                                  settings.width_m, height);
    }
    if (settings.floor) {
        const double length = kFloorAhead - (wall_z + radius);
        shape.boards.emplace_back(facing({0.0, 0.0, wall_z + radius + 0.5 * length}, {0.0, 1.0, 0.0}, {0.0, 0.0, -1.0}),
                                  settings.width_m, length);
        shape.sweep =
            Sweep{static_cast<float>(wall_z), static_cast<float>(radius), static_cast<float>(0.5 * settings.width_m)};
    }
    return shape;
}

std::vector<Board> room_walls(const Double3& size_m) {
    const double w = size_m.x;
    const double d = size_m.y;
    const double h = size_m.z;
    const Double3 x(1.0, 0.0, 0.0);
    const Double3 y(0.0, 1.0, 0.0);
    const Double3 z(0.0, 0.0, 1.0);
    // A hair below the mark's level, so that a backdrop on the floor lies on it and not in it.
    const double floor = -0.001;
    const Double3 middle(0.0, floor + 0.5 * h, 0.0);
    std::vector<Board> walls;
    walls.emplace_back(facing({0.0, floor, 0.0}, y, -z), w, d);
    walls.emplace_back(facing({0.0, floor + h, 0.0}, -y, z), w, d);
    walls.emplace_back(facing(middle - 0.5 * w * x, x, y), d, h);
    walls.emplace_back(facing(middle + 0.5 * w * x, -x, y), d, h);
    walls.emplace_back(facing(middle - 0.5 * d * z, z, y), w, h);
    walls.emplace_back(facing(middle + 0.5 * d * z, -z, y), w, h);
    return walls;
}

}  // namespace understudy
