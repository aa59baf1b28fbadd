// What the sitter's skin is like at a point of the mesh: what is in it, how it shines, and its fine relief.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "sitter/sitter.h"

namespace understudy {

class SkinCover {
  public:
    explicit SkinCover(const SitterMesh& mesh);

    // share: of the triangle's second and third corner.
    SkinSpot spot_at(std::uint32_t triangle, const Vec2& share) const;

    // The smooth unit normal bent by pores, fine lines and the grooves of the lips, and the spot in them: what lies
    // deep is a little darker. They are a height over the place on the straight head, so they turn with it.
    struct Relieved {
        Vec3 normal;
        SkinSpot spot;
    };
    Relieved relieved(const Vec3& normal, const SkinSpot& spot, std::uint32_t triangle, const Vec2& share) const;

  private:
    std::vector<std::array<std::uint32_t, 3>> triangles_;
    std::vector<Vec3> positions_;
    std::vector<SkinVertex> skin_;
    std::vector<Vec3> straight_;
};

}  // namespace understudy
