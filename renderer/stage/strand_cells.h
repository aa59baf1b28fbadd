// Which pieces of hairs pass through each small cell of a grid: what is asked when a ray meets hair.
//
// Hairs of a lock lie so near to one another that boxes round them overlap by the dozen, while a ray that leaves a hair
// comes no farther than a millimetre or two: a grid of about that step lists little more than what it can meet.
// Amanatides and Woo, "A Fast Voxel Traversal Algorithm for Ray Tracing", Eurographics 1987, with steps over whole
// empty blocks.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <span>
#include <vector>

#include <glm/common.hpp>

#include "base/geometry.h"
#include "sitter/strands.h"

namespace understudy {

class StrandCells {
  public:
    // A piece goes from the point of its number to the next one. The same for any number of threads.
    explicit StrandCells(const Strands& strands);

    // The pieces of cells in the order in which the ray goes through them, until visit(pieces, leaves) says that it is
    // done; leaves: how far along the ray the cell ends. A piece comes as often as cells that it passes through. Past
    // the end there are seven more numbers of pieces to read, so that eight can be taken at once.
    template <class Visitor>
    void along(const Ray& ray, const Visitor& visit) const;

  private:
    static constexpr std::size_t kPiecesAfter = 7;
    static constexpr int kBlock = 4;  // cells on each side
    static constexpr int kHall = 16;  // the same, of 64 blocks

    struct Hall {
        std::uint64_t used_blocks = 0;      // a bit each
        std::vector<std::uint32_t> starts;  // of each cell's pieces, and where the last ones end; none: empty
        std::vector<std::uint32_t> pieces;
    };

    // Any cell in it will do; x goes first.
    std::size_t hall_of(const glm::ivec3& cell) const {
        const glm::ivec3 at = cell >> 4;
        const int hall = (at.z * halls_across_.y + at.y) * halls_across_.x + at.x;
        return static_cast<std::size_t>(hall);
    }
    static std::uint32_t within_hall(const glm::ivec3& cell) {
        return (static_cast<std::uint32_t>(cell.z & 15) << 8U) | (static_cast<std::uint32_t>(cell.y & 15) << 4U) |
               static_cast<std::uint32_t>(cell.x & 15);
    }
    static std::uint64_t block_bit(std::uint32_t within) {
        const auto part = [&](std::uint32_t from) { return (within >> from) & 3U; };
        return std::uint64_t{1} << ((part(10) << 4U) | (part(6) << 2U) | part(2));
    }

    void lay_out(const std::vector<StrandPoint>& points);
    std::vector<std::vector<std::uint32_t>> pieces_of_halls(const Strands& strands) const;
    void fill(Hall& hall, const std::vector<StrandPoint>& points, const Vec3& low,
              const std::vector<std::uint32_t>& pieces) const;

    Vec3 low_{0.0F};
    float step_ = 0.0F;
    glm::ivec3 halls_across_{0};
    std::vector<Hall> halls_;
};

template <class Visitor>
void StrandCells::along(const Ray& ray, const Visitor& visit) const {
    const Vec3 from = (ray.origin - low_) / step_;
    Vec3 way = ray.direction / step_;
    for (glm::length_t a = 0; a < 3; ++a) {
        if (std::abs(way[a]) < 1e-9F) way[a] = std::copysign(1e-9F, way[a]);
    }
    const Vec3 inverse = 1.0F / way;
    const glm::ivec3 cells = kHall * halls_across_;
    const Vec3 here = -from * inverse;
    const Vec3 there = (Vec3(cells) - from) * inverse;
    const Vec3 in = glm::min(here, there);
    const Vec3 out = glm::max(here, there);
    const float enter = std::max({ray.near, in.x, in.y, in.z});
    const float leave = std::min({ray.far, out.x, out.y, out.z});
    if (!(enter < leave)) return;
    const glm::ivec3 ahead(way.x > 0.0F ? 1 : 0, way.y > 0.0F ? 1 : 0, way.z > 0.0F ? 1 : 0);
    glm::ivec3 cell = glm::clamp(glm::ivec3(from + enter * way), glm::ivec3(0), cells - 1);
    for (;;) {
        const Hall& hall = halls_[hall_of(cell)];
        const bool used = (hall.used_blocks & block_bit(within_hall(cell))) != 0;
        const int size = used ? 1 : (hall.used_blocks != 0 ? kBlock : kHall);
        const glm::ivec3 low = cell & ~(size - 1);
        const Vec3 ends = (Vec3(low + size * ahead) - from) * inverse;
        const glm::length_t axis = ends.x < ends.y ? (ends.x < ends.z ? 0 : 2) : (ends.y < ends.z ? 1 : 2);
        const float leaves = ends[axis];
        if (used) {
            const std::uint32_t* start = &hall.starts[within_hall(cell)];
            if (start[1] > start[0] && visit(std::span(hall.pieces).subspan(start[0], start[1] - start[0]), leaves)) {
                return;
            }
        }
        if (!(leaves < leave)) return;
        if (size > 1) cell = glm::clamp(glm::ivec3(from + leaves * way), low, low + size - 1);
        cell[axis] = ahead[axis] != 0 ? low[axis] + size : low[axis] - 1;
        if (cell[axis] < 0 || cell[axis] >= cells[axis]) return;
    }
}

}  // namespace understudy
