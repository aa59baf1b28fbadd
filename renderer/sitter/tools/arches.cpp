#include "sitter/tools/arches.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace understudy {
namespace {

// Vertex numbers of the package's own mesh, from the middle to the sitter's left.
using Half = std::array<std::uint32_t, 9>;
constexpr Half kUpperRoot = {15061, 15060, 15062, 15063, 15064, 15065, 15066, 15067, 15068};
constexpr Half kUpperEdge = {15069, 15086, 15071, 15070, 15085, 15078, 15077, 15076, 15080};
constexpr Half kLowerRoot = {14993, 14992, 14994, 14995, 14996, 14997, 14998, 14999, 15000};
constexpr Half kLowerEdge = {15010, 15001, 15002, 15003, 15004, 15005, 15006, 15007, 15008};

std::vector<std::uint32_t> from_right_to_left(const Package& package, const Half& left) {
    std::vector<std::uint32_t> line;
    for (std::size_t i = left.size() - 1; i > 0; --i) line.push_back(mirrored(package, left.at(i)));
    line.insert(line.end(), left.begin(), left.end());
    return line;
}

// The lower row's marks on either side of a depth in the mouth, and the second one's share.
struct Beside {
    std::uint32_t before, behind;
    double share;
};
Beside beside(const Package& package, double z) {
    std::size_t i = 1;
    while (i + 1 < kLowerEdge.size() && package.positions[kLowerEdge.at(i)].z > z) ++i;
    const double before = package.positions[kLowerEdge.at(i - 1)].z;
    const double behind = package.positions[kLowerEdge.at(i)].z;
    const double share = std::clamp((before - z) / (before - behind), 0.0, 1.0);
    return {kLowerEdge.at(i - 1), kLowerEdge.at(i), share};
}

}  // namespace

void let_tongue_follow(Package& package) {
    std::set<std::uint32_t> tongue;
    for (std::size_t f = package.body_faces; f < package.faces.size(); ++f) {
        tongue.insert(package.faces[f].begin(), package.faces[f].end());
    }
    const std::size_t a_shape = package.positions.size() * 3;
    for (std::size_t s = 0; s < package.shape_names.size(); ++s) {
        if (!package.shape_names[s].starts_with("expression/")) continue;
        std::int16_t* deltas = &package.shape_deltas[s * a_shape];
        for (const auto v : tongue) {
            const Beside jaw = beside(package, package.positions[v].z);
            // Sideways the teeth of one side would pull it along.
            deltas[std::size_t{3} * v] = 0;
            for (std::size_t k = 1; k < 3; ++k) {
                const double before = deltas[std::size_t{3} * jaw.before + k];
                const double way = std::lerp(before, deltas[std::size_t{3} * jaw.behind + k], jaw.share);
                deltas[std::size_t{3} * v + k] = static_cast<std::int16_t>(std::lround(way));
            }
        }
    }
}

std::array<ArchMarks, 2> find_arches(const Package& package) {
    return {ArchMarks{from_right_to_left(package, kUpperRoot), from_right_to_left(package, kUpperEdge)},
            ArchMarks{from_right_to_left(package, kLowerRoot), from_right_to_left(package, kLowerEdge)}};
}

}  // namespace understudy
