#include "sitter/skinned_mesh.h"

#include <glm/geometric.hpp>

namespace understudy {
namespace {

using Triangle = std::array<std::uint32_t, 3>;

// The quad's two triangles, split along the shorter diagonal.
std::array<Triangle, 2> split(const Quad& q, const std::vector<Double3>& p) {
    if (glm::distance(p[q[0]], p[q[2]]) <= glm::distance(p[q[1]], p[q[3]])) {
        return {Triangle{q[0], q[1], q[2]}, Triangle{q[0], q[2], q[3]}};
    }
    return {Triangle{q[0], q[1], q[3]}, Triangle{q[1], q[2], q[3]}};
}

}  // namespace

SkinnedMesh skin_mesh(const RefinedHead& head) {
    SkinnedMesh mesh{head.positions, head.weights, {}, {}};
    for (std::size_t f = 0; f < head.quads.size(); ++f) {
        for (const Triangle& t : split(head.quads[f], head.positions)) {
            if (t[0] == t[1] || t[1] == t[2] || t[2] == t[0]) continue;
            mesh.triangles.push_back(t);
            mesh.zones.push_back(head.zones[f]);
        }
    }
    return mesh;
}

std::vector<Double3> smooth_normals(const std::vector<Double3>& positions, const std::vector<Triangle>& triangles) {
    std::vector<Double3> normals(positions.size(), Double3(0.0));
    for (const Triangle& t : triangles) {
        const Double3 n = glm::cross(positions[t[1]] - positions[t[0]], positions[t[2]] - positions[t[0]]);
        for (const auto v : t) normals[v] += n;
    }
    for (Double3& n : normals) {
        const double length = glm::length(n);
        n = length > 0.0 ? n / length : Double3(0.0, 1.0, 0.0);
    }
    return normals;
}

}  // namespace understudy
