#include "sitter/wardrobe/skin_rays.h"

#include <algorithm>
#include <cmath>

#include <glm/geometric.hpp>

#include "sitter/ray_triangle.h"

namespace understudy {
namespace {

constexpr double kFarOff = 0.5;  // metres from the middle, where rays start

bool of_the_head(Zone zone) { return zone < Zone::kNeck && !is_inside(zone); }

}  // namespace

HeadSurface::HeadSurface(const SkinnedMesh& mesh, Ears ears)
    : along_z_(kAcross * kAcross), along_x_(kAcross * kAcross) {
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        if (!of_the_head(mesh.zones[t]) || (ears == Ears::kLeftOut && mesh.zones[t] == Zone::kEar)) continue;
        const auto& [a, b, c] = mesh.triangles[t];
        const auto number = static_cast<std::uint32_t>(triangles_.size());
        triangles_.push_back({mesh.positions[a], mesh.positions[b], mesh.positions[c]});
        sort_in(along_z_, number, 0, 1);
        sort_in(along_x_, number, 1, 2);
    }
}

std::optional<std::size_t> HeadSurface::cell_at(double a, double b) {
    const double column = std::floor(a / kCell) + 0.5 * kAcross;
    const double row = std::floor(b / kCell) + 0.5 * kAcross;
    if (column < 0.0 || row < 0.0 || column >= kAcross || row >= kAcross) return std::nullopt;
    return static_cast<std::size_t>(row) * kAcross + static_cast<std::size_t>(column);
}

void HeadSurface::sort_in(Cells& cells, std::uint32_t triangle, glm::length_t a, glm::length_t b) const {
    const auto& corners = triangles_[triangle];
    const Double3 low = glm::min(corners[0], glm::min(corners[1], corners[2]));
    const Double3 high = glm::max(corners[0], glm::max(corners[1], corners[2]));
    for (double u = std::floor(low[a] / kCell); u <= std::floor(high[a] / kCell); u += 1.0) {
        for (double v = std::floor(low[b] / kCell); v <= std::floor(high[b] / kCell); v += 1.0) {
            if (const auto cell = cell_at((u + 0.5) * kCell, (v + 0.5) * kCell)) cells[*cell].push_back(triangle);
        }
    }
}

std::optional<double> HeadSurface::first_skin(const Cells& cells, std::optional<std::size_t> cell,
                                              const Double3& origin, const Double3& way) const {
    std::optional<double> best;
    if (!cell) return best;
    for (const auto number : cells[*cell]) {
        const auto met = meet_front(origin, way, triangles_[number]);
        if (met && !(best && met->distance >= *best)) best = met->distance;
    }
    return best;
}

std::optional<double> HeadSurface::front_at(double x, double y) const {
    const auto distance = first_skin(along_z_, cell_at(x, y), {x, y, kFarOff}, {0.0, 0.0, -1.0});
    return distance ? std::optional(kFarOff - *distance) : std::nullopt;
}

std::optional<double> HeadSurface::side_at(double side, double y, double z, double within) const {
    const auto distance = first_skin(along_x_, cell_at(y, z), {side * within, y, z}, {-side, 0.0, 0.0});
    return distance ? std::optional(side * (within - *distance)) : std::nullopt;
}

}  // namespace understudy
