// A ball as a mesh, for what has to hold on skin of a known shape.
#pragma once

#include <cmath>

#include "sitter/sitter.h"

namespace understudy {

// rings: from pole to pole; twice as many round it.
inline SitterMesh ball_of_skin(int rings, const Vec3& centre, float radius, const SkinSpot& spot = {}) {
    SitterMesh mesh;
    const int around = 2 * rings;
    for (int i = 0; i <= rings; ++i) {
        const float polar = kPi * static_cast<float>(i) / static_cast<float>(rings);
        for (int k = 0; k < around; ++k) {
            const float turn = 2.0F * kPi * static_cast<float>(k) / static_cast<float>(around);
            const Vec3 n(std::sin(polar) * std::cos(turn), std::cos(polar), std::sin(polar) * std::sin(turn));
            mesh.positions.push_back(centre + radius * n);
            mesh.normals.push_back(n);
            mesh.straight.push_back(mesh.positions.back());
            mesh.skin.push_back({spot, 0.0F, 0.0F});
        }
    }
    const auto at = [&](int i, int k) { return static_cast<std::uint32_t>(i * around + k % around); };
    for (int i = 0; i < rings; ++i) {
        for (int k = 0; k < around; ++k) {
            if (i > 0) mesh.triangles.push_back({at(i, k), at(i, k + 1), at(i + 1, k)});
            if (i + 1 < rings) mesh.triangles.push_back({at(i, k + 1), at(i + 1, k + 1), at(i + 1, k)});
        }
    }
    mesh.zones.assign(mesh.triangles.size(), Zone::kFace);
    return mesh;
}

}  // namespace understudy
