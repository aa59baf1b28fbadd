// Closed lines of edges that run straight on through a mesh of quads, and what they enclose.
#pragma once

#include <map>
#include <set>
#include <vector>

#include "sitter/tools/package.h"

namespace understudy {

class QuadNet {
  public:
    explicit QuadNet(const std::vector<std::array<std::uint32_t, 4>>& faces);

    // The loop that begins with this edge, or nothing if it does not close.
    std::vector<std::uint32_t> loop_from(const std::array<std::uint32_t, 2>& edge) const;

    // Every face that can be reached from a vertex of the mesh without stepping over a vertex of the loop.
    std::set<std::size_t> enclosed(const std::vector<std::uint32_t>& loop, std::uint32_t inside) const;

  private:
    std::uint32_t straight_on(std::uint32_t from, std::uint32_t at) const;

    const std::vector<std::array<std::uint32_t, 4>>& faces_;
    std::map<std::uint32_t, std::vector<std::size_t>> faces_at_;
};

}  // namespace understudy
