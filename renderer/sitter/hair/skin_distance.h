// How far a place is from the sitter's skin, on a grid round the head: so that strands lie on it and not in it.
#pragma once

#include <vector>

#include "base/geometry.h"
#include "sitter/sitter.h"

namespace understudy {

class SkinDistance {
  public:
    struct Reading {
        float distance = 0.0F;        // metres, negative inside
        Vec3 away{0.0F, 1.0F, 0.0F};  // unit, the way out
    };

    // Places and normals of the mesh in the head's axes; the box is what the grid covers.
    SkinDistance(const std::vector<Vec3>& places, const std::vector<Vec3>& normals, const Vec3& low, const Vec3& high);

    // Trilinear; outside the box as at its nearest place.
    Reading at(const Vec3& place) const;

  private:
    struct Cell {
        int x, y, z;
    };
    std::size_t index(int x, int y, int z) const {
        return (static_cast<std::size_t>(z) * static_cast<std::size_t>(count_.y) + static_cast<std::size_t>(y)) *
                   static_cast<std::size_t>(count_.x) +
               static_cast<std::size_t>(x);
    }
    Vec3 place_of(int x, int y, int z) const;
    void lay_skin(const std::vector<Vec3>& places, const std::vector<Vec3>& normals);
    void tell_outside();
    void carry_outward(const std::vector<Vec3>& places);
    void look_at_neighbour(const std::vector<Vec3>& places, const Cell& cell, const Cell& other);

    Vec3 low_;
    glm::ivec3 count_;
    std::vector<float> distance_;
    std::vector<std::uint32_t> nearest_;  // vertex, while it is being built
};

}  // namespace understudy
