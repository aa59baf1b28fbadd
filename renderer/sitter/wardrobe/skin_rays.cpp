#include "sitter/wardrobe/skin_rays.h"

#include <glm/geometric.hpp>

namespace understudy {
namespace {

constexpr double kFarOff = 0.5;  // metres from the middle, where rays start

bool of_the_head(Zone zone) { return zone < Zone::kNeck && zone != Zone::kMouth; }

}  // namespace

HeadSurface::HeadSurface(const SkinnedMesh& mesh, Ears ears) {
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        if (!of_the_head(mesh.zones[t]) || (ears == Ears::kLeftOut && mesh.zones[t] == Zone::kEar)) continue;
        const auto& [a, b, c] = mesh.triangles[t];
        triangles_.push_back({mesh.positions[a], mesh.positions[b], mesh.positions[c]});
    }
}

// Möller and Trumbore, "Fast, Minimum Storage Ray/Triangle Intersection", JGT 2(1), 1997.
std::optional<double> HeadSurface::first_skin(const Double3& origin, const Double3& way) const {
    std::optional<double> best;
    for (const auto& [a, b, c] : triangles_) {
        const Double3 ab = b - a;
        const Double3 ac = c - a;
        const Double3 p = glm::cross(way, ac);
        const double det = glm::dot(ab, p);
        if (det <= 0.0) continue;  // seen from behind
        const Double3 s = origin - a;
        const double u = glm::dot(s, p) / det;
        if (u < 0.0 || u > 1.0) continue;
        const Double3 q = glm::cross(s, ab);
        const double v = glm::dot(way, q) / det;
        const double distance = glm::dot(ac, q) / det;
        if (v < 0.0 || u + v > 1.0 || distance <= 0.0 || (best && distance >= *best)) continue;
        best = distance;
    }
    return best;
}

std::optional<double> HeadSurface::front_at(double x, double y) const {
    const auto distance = first_skin({x, y, kFarOff}, {0.0, 0.0, -1.0});
    return distance ? std::optional(kFarOff - *distance) : std::nullopt;
}

std::optional<double> HeadSurface::side_at(double side, double y, double z) const {
    const auto distance = first_skin({side * kFarOff, y, z}, {-side, 0.0, 0.0});
    return distance ? std::optional(side * (kFarOff - *distance)) : std::nullopt;
}

}  // namespace understudy
