// The sitter's skin from within: where a walk under it goes.
//
// A scene of its own, of skin only. The mouth's inside and the sockets are left out: what lies behind them is bright
// flesh too, and walls there would darken lips and lids.
#pragma once

#include <optional>
#include <vector>

#include "sitter/sitter.h"
#include "stage/distance_grid.h"
#include "stage/triangle_scene.h"

namespace understudy {

class Flesh {
  public:
    explicit Flesh(const Sitter& sitter);

    struct Wall {
        float distance = 0.0F;
        MeshMeeting meeting;       // with the sitter's own triangle
        bool from_within = false;  // or it was come to from the air
    };
    bool free(const Vec3& from, float distance) const { return distance < grid_.free_around(from); }
    std::optional<Wall> wall(const Ray& ray) const;
    bool contains(const Wall& wall) const { return wall.from_within; }

  private:
    struct Skin {
        std::vector<std::array<std::uint32_t, 3>> triangles;
        std::vector<std::uint32_t> numbers;  // in the sitter's mesh
    };
    static Skin skin_of(const Sitter& sitter);
    Flesh(const SitterMesh& mesh, Skin skin);

    std::vector<std::uint32_t> numbers_;
    TriangleScene scene_;
    DistanceGrid grid_;
};

}  // namespace understudy
