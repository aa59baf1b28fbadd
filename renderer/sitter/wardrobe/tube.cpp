#include "sitter/wardrobe/tube.h"

#include <algorithm>
#include <cmath>

#include <glm/geometric.hpp>

namespace understudy {
namespace {

constexpr std::uint32_t kRound = 14;  // points round a section

BoneWeights skull_only() {
    BoneWeights weights{};
    weights[kSkull] = 1.0F;
    return weights;
}

void add_triangle(SkinnedMesh& mesh, std::uint32_t a, std::uint32_t b, std::uint32_t c, Zone zone) {
    mesh.triangles.push_back({a, b, c});
    mesh.zones.push_back(zone);
}

std::uint32_t add_point(SkinnedMesh& mesh, const Double3& place) {
    mesh.positions.push_back(place);
    mesh.weights.push_back(skull_only());
    return static_cast<std::uint32_t>(mesh.positions.size() - 1);
}

// A section of a share of its size, moved along the way.
std::uint32_t add_section(SkinnedMesh& mesh, const TubePoint& point, const Double3& way, double share, double along) {
    const Double3 across = glm::normalize(point.across - glm::dot(point.across, way) * way);
    const Double3 deep = glm::cross(way, across);
    std::uint32_t first = 0;
    for (std::uint32_t k = 0; k < kRound; ++k) {
        const double angle = 2.0 * kPiDouble * k / kRound;
        const std::uint32_t number = add_point(mesh, point.middle + along * way +
                                                         share * (std::cos(angle) * point.half_across * across +
                                                                  std::sin(angle) * point.half_deep * deep));
        if (k == 0) first = number;
    }
    return first;
}

void join(SkinnedMesh& mesh, std::uint32_t from, std::uint32_t to, Zone zone) {
    for (std::uint32_t k = 0; k < kRound; ++k) {
        const std::uint32_t next = (k + 1) % kRound;
        add_triangle(mesh, from + k, from + next, to + next, zone);
        add_triangle(mesh, from + k, to + next, to + k, zone);
    }
}

}  // namespace

void add_tube(SkinnedMesh& mesh, const std::vector<TubePoint>& points, bool loop, Zone zone) {
    constexpr int kCapSteps = 4;
    const std::size_t count = points.size();
    std::vector<std::uint32_t> sections;
    const auto way_at = [&](std::size_t i) {
        const Double3& before = points[loop ? (i + count - 1) % count : (i == 0 ? 0 : i - 1)].middle;
        const Double3& after = points[loop ? (i + 1) % count : std::min(i + 1, count - 1)].middle;
        return glm::normalize(after - before);
    };
    const auto cap = [&](std::size_t i, int step, double sense) {
        const double angle = 0.5 * kPiDouble * step / kCapSteps;
        const double radius = std::min(points[i].half_across, points[i].half_deep);
        return add_section(mesh, points[i], way_at(i), std::max(std::cos(angle), 0.02),
                           sense * radius * std::sin(angle));
    };
    if (!loop) {
        for (int step = kCapSteps; step > 0; --step) sections.push_back(cap(0, step, -1.0));
    }
    for (std::size_t i = 0; i < count; ++i) sections.push_back(add_section(mesh, points[i], way_at(i), 1.0, 0.0));
    if (!loop) {
        for (int step = 1; step <= kCapSteps; ++step) sections.push_back(cap(count - 1, step, 1.0));
    }
    for (std::size_t i = 0; i + 1 < sections.size(); ++i) join(mesh, sections[i], sections[i + 1], zone);
    if (loop) join(mesh, sections.back(), sections.front(), zone);
}

void add_pad(SkinnedMesh& mesh, const Double3& middle, const Double3& flat, const Double3& half_axes, Zone zone) {
    const Double3 up = glm::normalize(Double3(0.0, 1.0, 0.0) - glm::dot(Double3(0.0, 1.0, 0.0), flat) * flat);
    std::vector<TubePoint> points;
    constexpr int kSteps = 10;
    for (int i = 0; i <= kSteps; ++i) {
        const double angle = kPiDouble * (i + 0.5) / (kSteps + 1);
        const double size = std::sin(angle);
        points.push_back({middle - std::cos(angle) * half_axes.y * up, flat, size * half_axes.x, size * half_axes.z});
    }
    add_tube(mesh, points, false, zone);
}

}  // namespace understudy
