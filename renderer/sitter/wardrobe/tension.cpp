#include "sitter/wardrobe/tension.h"

#include <algorithm>

#include <glm/geometric.hpp>

namespace understudy {
namespace {

constexpr int kSweeps = 80;
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
Tension::Tension(const Sheet& sheet) : pulls_(sheet.points.size()), areas_(sheet.points.size(), 0.0) {
    const auto add = [&](std::uint32_t from, std::uint32_t to, double strength) {
        for (Pull& pull : pulls_[from]) {
            if (pull.to != to) continue;
            pull.strength += strength;
            return;
        }
        pulls_[from].push_back({to, strength});
    };
    for (const auto& t : sheet.triangles) {
        for (std::size_t k = 0; k < 3; ++k) {
            const auto at = t.at(k);
            const auto a = t.at((k + 1) % 3);
            const auto b = t.at((k + 2) % 3);
            const Double3& corner = sheet.points[at].skin;
            const Double3 ab = glm::cross(sheet.points[a].skin - corner, sheet.points[b].skin - corner);
            areas_[at] += glm::length(ab) / 6.0;
            const double strength = 0.5 * cotangent(corner, sheet.points[a].skin, sheet.points[b].skin);
            add(a, b, strength);
            add(b, a, strength);
        }
    }
    for (auto& pulls : pulls_) {
        for (Pull& pull : pulls) pull.strength = std::clamp(pull.strength, kLeastPull, kMostPull);
    }
}

std::vector<Double3> Tension::drawn(const std::vector<Double3>& rest, double width_m, const Held& held) const {
    std::vector<Double3> places = rest;
    for (int sweep = 0; sweep < kSweeps; ++sweep) {
        for (std::size_t v = 0; v < places.size(); ++v) {
            double total = areas_[v] / (width_m * width_m);
            Double3 sum = total * rest[v];
            for (const Pull& pull : pulls_[v]) {
                total += pull.strength;
                sum += pull.strength * places[pull.to];
            }
            places[v] = held(v, sum / total);
        }
    }
    return places;
}

}  // namespace understudy
