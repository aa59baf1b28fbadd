// Faces of plain geometry, whose shadows can be told with a pencil.
#pragma once

#include <cmath>
#include <functional>

#include "meter/face/face_view.h"
#include "support/studio_from.h"

namespace understudy {

// Sheets and solids added one by one; metres, the eyes' midpoint at (0, eye height, 0).
class PlainMesh {
  public:
    explicit PlainMesh(double eye_height) : up_(0.0, eye_height, 0.0) {}

    // z over a grid of x and y, seen from the front.
    void sheet(const std::function<double(double, double)>& z, const Double3& low, const Double3& high, int steps,
               Zone zone) {
        const auto at = [&](int i, int k) {
            const double x = low.x + (high.x - low.x) * i / steps;
            const double y = low.y + (high.y - low.y) * k / steps;
            return Double3(x, y, z(x, y));
        };
        for (int i = 0; i < steps; ++i) {
            for (int k = 0; k < steps; ++k) {
                quad(at(i, k), at(i + 1, k), at(i + 1, k + 1), at(i, k + 1), zone);
            }
        }
    }
    void quad(const Double3& a, const Double3& b, const Double3& c, const Double3& d, Zone zone) {
        triangle(a, b, c, zone);
        triangle(a, c, d, zone);
    }
    void triangle(const Double3& a, const Double3& b, const Double3& c, Zone zone) {
        const auto first = static_cast<std::uint32_t>(mesh_.positions.size());
        const Double3 normal = glm::normalize(glm::cross(b - a, c - a));
        for (const Double3& p : {a, b, c}) {
            mesh_.positions.emplace_back(p + up_);
            mesh_.normals.emplace_back(normal);
            mesh_.straight.emplace_back(p);
            mesh_.skin.emplace_back();
        }
        mesh_.triangles.push_back({first, first + 1, first + 2});
        mesh_.zones.push_back(zone);
    }
    const SitterMesh& mesh() const { return mesh_; }

  private:
    Double3 up_;
    SitterMesh mesh_;
};

inline constexpr double kPlainEyeHeight = 1.25;

// The studio of a scene without a sitter, with this mesh and these eyes on the mark.
inline Studio studio_with(const SitterMesh& mesh, const std::array<Double3, 2>& eyes, const std::string& lights) {
    Studio studio =
        studio_from("[sitter]\nhead = \"none\"\neye_height = 1.25\n[backdrop]\nsurface = \"none\"\n" + lights);
    studio.sitter.kind = Sitter::Kind::kHead;
    studio.sitter.mesh = mesh;
    studio.sitter.eyes.emplace();
    for (std::size_t e = 0; e < 2; ++e) {
        (*studio.sitter.eyes).at(e).centre = eyes.at(e) + Double3(0.0, kPlainEyeHeight, 0.0);
    }
    studio.setup.picture.skin = SkinLight::kAtSurface;
    return studio;
}

}  // namespace understudy
