#include "sitter/tools/loops.h"

#include <algorithm>

namespace understudy {
namespace {

constexpr std::size_t kLongest = 100;  // edges; no lid or lip has more

}  // namespace

QuadNet::QuadNet(const std::vector<std::array<std::uint32_t, 4>>& faces) : faces_(faces) {
    for (std::size_t f = 0; f < faces_.size(); ++f) {
        for (const auto v : faces_[f]) faces_at_[v].push_back(f);
    }
}

// On across a vertex of four edges: the neighbour that shares no face with where one came from.
std::uint32_t QuadNet::straight_on(std::uint32_t from, std::uint32_t at) const {
    std::set<std::uint32_t> left;
    std::set<std::uint32_t> beside;
    for (const auto f : faces_at_.at(at)) {
        const auto& face = faces_[f];
        const auto k = static_cast<std::size_t>(std::find(face.begin(), face.end(), at) - face.begin());
        left.insert(face.at((k + 1) % 4));
        left.insert(face.at((k + 3) % 4));
        if (std::find(face.begin(), face.end(), from) != face.end()) beside.insert(face.begin(), face.end());
    }
    for (const auto v : beside) left.erase(v);
    return left.size() == 1 ? *left.begin() : at;
}

std::vector<std::uint32_t> QuadNet::loop_from(const std::array<std::uint32_t, 2>& edge) const {
    std::vector<std::uint32_t> loop = {edge[0], edge[1]};
    while (loop.size() < kLongest) {
        const auto next = straight_on(loop[loop.size() - 2], loop.back());
        if (next == loop.front()) return loop;
        if (next == loop.back()) break;
        loop.push_back(next);
    }
    return {};
}

std::set<std::size_t> QuadNet::enclosed(const std::vector<std::uint32_t>& loop, std::uint32_t inside) const {
    const std::set<std::uint32_t> wall(loop.begin(), loop.end());
    std::set<std::uint32_t> seen = {inside};
    std::vector<std::uint32_t> open = {inside};
    std::set<std::size_t> found;
    while (!open.empty()) {
        const auto at = open.back();
        open.pop_back();
        for (const auto f : faces_at_.at(at)) {
            found.insert(f);
            for (const auto v : faces_[f]) {
                if (wall.count(v) == 0 && seen.insert(v).second) open.push_back(v);
            }
        }
    }
    return found;
}

}  // namespace understudy
