// The sitter's skin from within: where a walk under it goes.
//
// A scene of its own, of skin only. The mouth's inside and the sockets are left out: what lies behind them is bright
// flesh too, and walls there would darken lips and lids. The eyes, then, belong to the flesh, and light comes out of it
// between the lids too: else those would lose what wanders farthest, the red.
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
        MeshMeeting meeting;          // with the sitter's own triangle, when it is no eye
        bool from_within = false;     // or it was come to from the air
        std::optional<Ray> on_eye{};  // of an eye between the lids: the place, and the unit way out
    };
    bool free(const Vec3& from, float distance) const {
        return distance < grid_.free_around(from) && clear_of_eyes(from, distance);
    }
    std::optional<Wall> wall(const Ray& ray) const;
    bool contains(const Wall& wall) const { return wall.from_within; }
    // An eye's white keeps most of the light in that meets it from a lid.
    float sends_back(const Wall& wall) const { return wall.on_eye ? kWhiteSendsBack : 0.0F; }
    Vec3 mirrored(const Wall& wall, const Vec3& way) const { return glm::reflect(way, wall.on_eye->direction); }

  private:
    static constexpr float kWhiteSendsBack = 0.90F;  // by eye: what goes in spreads out behind it
    struct Skin {
        std::vector<std::array<std::uint32_t, 3>> triangles;
        std::vector<std::uint32_t> numbers;  // in the sitter's mesh
    };
    static Skin skin_of(const Sitter& sitter);
    Flesh(const Sitter& sitter, Skin skin);
    std::optional<Wall> mesh_wall(const Ray& ray) const;
    // Where the ray leaves the eye, if it is known to get into the air there or no lid lies before it.
    std::optional<Wall> eye_wall(const Eye& eye, const Ray& ray, bool into_air) const;
    bool clear_of_eyes(const Vec3& from, float distance) const;

    std::vector<Eye> eyes_;
    std::vector<std::uint32_t> numbers_;
    TriangleScene scene_;
    DistanceGrid grid_;
};

}  // namespace understudy
