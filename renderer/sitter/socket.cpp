#include "sitter/socket.h"

#include <algorithm>
#include <utility>

namespace understudy {
namespace {

using Neighbours = std::vector<std::vector<std::uint32_t>>;

Neighbours neighbours_of(const RefinedHead& head) {
    Neighbours neighbours(head.positions.size());
    for (const Quad& quad : head.quads) {
        for (std::size_t k = 0; k < 4; ++k) neighbours[quad.at(k)].push_back(quad.at((k + 1) % 4));
    }
    return neighbours;  // one way round is enough: every inner edge is met from both sides
}

// Marks all that can be walked to from `open` over unmarked vertices.
void spread(std::vector<std::uint32_t> open, const Neighbours& neighbours, std::vector<bool>& marks) {
    for (const auto v : open) marks[v] = true;
    while (!open.empty()) {
        const auto at = open.back();
        open.pop_back();
        for (const auto next : neighbours[at]) {
            if (marks[next]) continue;
            marks[next] = true;
            open.push_back(next);
        }
    }
}

}  // namespace

void set_sockets_apart(RefinedHead& head) {
    const Neighbours neighbours = neighbours_of(head);
    std::vector<bool> outside(head.positions.size(), false);
    for (const auto& margins : head.margins) {
        for (const auto v : margins.inner) outside[v] = true;
    }
    std::vector<std::uint32_t> outer;
    for (const auto& margins : head.margins) outer.insert(outer.end(), margins.outer.begin(), margins.outer.end());
    spread(std::move(outer), neighbours, outside);

    // What is left next to the inner edges, and on from there.
    std::vector<std::uint32_t> lining;
    for (const auto& margins : head.margins) {
        for (const auto v : margins.inner) {
            for (const auto next : neighbours[v]) {
                if (!outside[next]) lining.push_back(next);
            }
        }
    }
    std::vector<bool> reached = outside;
    spread(std::move(lining), neighbours, reached);
    for (std::size_t q = 0; q < head.quads.size(); ++q) {
        const Quad& quad = head.quads[q];
        const bool behind = std::any_of(quad.begin(), quad.end(), [&](auto v) { return reached[v] && !outside[v]; });
        if (behind) head.zones[q] = Zone::kSocket;
    }
}

}  // namespace understudy
