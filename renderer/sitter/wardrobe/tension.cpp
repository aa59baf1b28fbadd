#include "sitter/wardrobe/tension.h"

#include <algorithm>
#include <utility>

#include <glm/common.hpp>
#include <glm/geometric.hpp>

namespace understudy {
namespace {

// Enough for a body's mesh, whose finest edges are a millimetre or two long.
int sweeps_for(double width_m) { return std::min(120, 8 + static_cast<int>(3000.0 * width_m)); }

// Successive over-relaxation, without which a fine mesh would need as many sweeps as the square of the width in edges.
// Young, "Iterative methods for solving partial difference equations of elliptic type", Trans. AMS 76, 1954; with
// points held: Cryer, "The solution of a quadratic programming problem using systematic overrelaxation", SIAM J.
// Control 9, 1971.
constexpr double kBeyond = 1.85;
// Very blunt triangles would push instead of pull; relaxation would not settle.
constexpr double kLeastPull = 0.02;
constexpr double kMostPull = 20.0;

double cotangent(const Double3& at, const Double3& a, const Double3& b) {
    const double sine = glm::length(glm::cross(a - at, b - at));
    return sine > 0.0 ? glm::dot(a - at, b - at) / sine : 0.0;
}

}  // namespace

// The cotangent formula: Pinkall and Polthier, "Computing discrete minimal surfaces and their conjugates", Experimental
// Mathematics 2(1), 1993.
Tension::Tension(const ClothSheet& sheet)
    : first_(sheet.points.size() + 1, 0), areas_(sheet.points.size(), 0.0), at_border_(sheet.points.size(), false) {
    struct Side {
        std::uint32_t from, to;
        double strength;
    };
    std::vector<Side> sides;
    sides.reserve(6 * sheet.triangles.size());
    for (const auto& t : sheet.triangles) {
        for (std::size_t k = 0; k < 3; ++k) {
            const auto at = t.at(k);
            const auto a = t.at((k + 1) % 3);
            const auto b = t.at((k + 2) % 3);
            const Double3& corner = sheet.points[at].skin;
            const Double3 normal = glm::cross(sheet.points[a].skin - corner, sheet.points[b].skin - corner);
            areas_[at] += glm::length(normal) / 6.0;
            const double strength = 0.5 * cotangent(corner, sheet.points[a].skin, sheet.points[b].skin);
            sides.push_back({a, b, strength});
            sides.push_back({b, a, strength});
        }
    }
    std::sort(sides.begin(), sides.end(),
              [](const Side& a, const Side& b) { return std::pair(a.from, a.to) < std::pair(b.from, b.to); });
    for (std::size_t i = 0; i < sides.size();) {
        const Side& side = sides[i];
        const std::size_t begin = i;
        double strength = 0.0;
        for (; i < sides.size() && sides[i].from == side.from && sides[i].to == side.to; ++i) {
            strength += sides[i].strength;
        }
        if (i - begin == 1) at_border_[side.from] = true;  // a side of one triangle only
        pulls_.push_back({side.to, std::clamp(strength, kLeastPull, kMostPull)});
        first_[side.from + 1] = pulls_.size();
    }
}

std::vector<Double3> Tension::drawn(const std::vector<Double3>& rest, double width_m, const Held& held) const {
    std::vector<Double3> places = rest;
    for (int sweep = sweeps_for(width_m); sweep > 0; --sweep) {
        for (std::size_t v = 0; v < places.size(); ++v) {
            if (at_border_[v]) continue;
            double total = areas_[v] / (width_m * width_m);
            Double3 sum = total * rest[v];
            for (std::size_t i = first_[v]; i < first_[v + 1]; ++i) {
                total += pulls_[i].strength;
                sum += pulls_[i].strength * places[pulls_[i].to];
            }
            const Double3 drawn = glm::mix(places[v], sum / total, kBeyond);
            places[v] = held ? held(v, drawn) : drawn;
        }
    }
    return places;
}

std::vector<Double3> Tension::unfolded(std::vector<Double3> places, int rounds) const {
    std::vector<Double3> next(places.size());
    for (; rounds > 0; --rounds) {
        for (std::size_t v = 0; v < places.size(); ++v) {
            Double3 sum(0.0);
            for (std::size_t i = first_[v]; i < first_[v + 1]; ++i) sum += places[pulls_[i].to];
            next[v] = at_border_[v] ? places[v]
                                    : 0.5 * places[v] + 0.5 / static_cast<double>(first_[v + 1] - first_[v]) * sum;
        }
        places.swap(next);
    }
    return places;
}

}  // namespace understudy
