// Bends the normal of worn cloth by its weave: what the camera sees of threads, ribs and nap.
#pragma once

#include <optional>
#include <vector>

#include "sitter/sitter.h"
#include "sitter/wardrobe/weave.h"

namespace understudy {

class ClothRelief {
  public:
    explicit ClothRelief(const Sitter& sitter);

    // share: of the triangle's second and third corner. A normal that is not a cloth's stays as it is.
    Vec3 bent(const Vec3& normal, std::uint32_t triangle, const Vec2& share) const;

  private:
    std::vector<std::optional<WeaveOf>> weaves_;  // one a zone
    std::vector<Vec3> straight_;
    std::vector<std::array<std::uint32_t, 3>> triangles_;
    std::vector<Zone> zones_;
};

}  // namespace understudy
