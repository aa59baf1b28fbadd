#include "sitter/wardrobe/body_cloth.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "sitter/wardrobe/folds.h"

namespace understudy {
namespace {

constexpr double kSoftly = 0.004;  // over which a layer leaves the skin that it bridges away from

// The larger of two lengths, without a kink.
double softly_larger(double a, double b) {
    return 0.5 * (a + b + std::sqrt((a - b) * (a - b) + kSoftly * kSoftly)) - 0.25 * kSoftly;
}

std::vector<std::vector<std::uint32_t>> neighbours_of(const Sheet& sheet) {
    std::vector<std::vector<std::uint32_t>> neighbours(sheet.points.size());
    for (const auto& t : sheet.triangles) {
        for (std::size_t k = 0; k < 3; ++k) {
            neighbours[t.at(k)].push_back(t.at((k + 1) % 3));
            neighbours[t.at(k)].push_back(t.at((k + 2) % 3));
        }
    }
    for (auto& list : neighbours) {
        std::sort(list.begin(), list.end());
        list.erase(std::unique(list.begin(), list.end()), list.end());
    }
    return neighbours;
}

double mean_edge(const Sheet& sheet) {
    double sum = 0.0;
    for (const auto& t : sheet.triangles) sum += glm::distance(sheet.points[t[0]].skin, sheet.points[t[1]].skin);
    return sum / static_cast<double>(sheet.triangles.size());
}

// A mean over neighbours, again and again: each round widens it by about half an edge's square.
std::vector<Double3> evened_out(const Sheet& body, double span) {
    const auto neighbours = neighbours_of(body);
    const double edge = mean_edge(body);
    const int rounds = static_cast<int>(std::ceil(2.0 * span * span / (edge * edge)));
    std::vector<Double3> places;
    for (const SheetPoint& point : body.points) places.push_back(point.skin);
    std::vector<Double3> next = places;
    for (int round = 0; round < rounds; ++round) {
        for (std::size_t v = 0; v < places.size(); ++v) {
            Double3 sum(0.0);
            for (const auto w : neighbours[v]) sum += places[w];
            next[v] = 0.5 * places[v] + 0.5 / static_cast<double>(neighbours[v].size()) * sum;
        }
        places.swap(next);
    }
    return places;
}

}  // namespace

Sheet body_sheet(const RefinedHead& head) {
    const SkinnedMesh skin = skin_mesh(head);
    const auto normals = smooth_normals(skin.positions, skin.triangles);
    Sheet sheet;
    std::vector<std::uint32_t> numbers(skin.positions.size(), std::numeric_limits<std::uint32_t>::max());
    const auto number_of = [&](std::uint32_t v) {
        if (numbers[v] == std::numeric_limits<std::uint32_t>::max()) {
            numbers[v] = static_cast<std::uint32_t>(sheet.points.size());
            sheet.points.push_back({skin.positions[v], skin.positions[v], normals[v], skin.weights[v]});
        }
        return numbers[v];
    };
    for (std::size_t t = 0; t < skin.triangles.size(); ++t) {
        if (skin.zones[t] != Zone::kNeck) continue;
        const auto& [a, b, c] = skin.triangles[t];
        const auto first = number_of(a);
        const auto second = number_of(b);
        const auto third = number_of(c);
        sheet.triangles.push_back({first, second, third});
    }
    return sheet;
}

Sheet laid(const Sheet& body, const Hang& hang, const BonePivots& pivots, unsigned seed) {
    const auto even = evened_out(body, hang.span_m);
    Sheet sheet = body;
    for (std::size_t v = 0; v < sheet.points.size(); ++v) {
        SheetPoint& point = sheet.points[v];
        const double freely = hang.freely(point);
        const Double3 bridge = freely * (even[v] - point.skin);
        const double above = glm::dot(bridge, point.normal);
        point.place = point.skin + bridge + (softly_larger(above, hang.clearance_m) - above) * point.normal;
    }
    set_normals(sheet);
    Sheet folded = sheet;
    for (SheetPoint& point : folded.points) {
        // Folds stand out from the cloth: none may dip into the skin.
        const double height = 0.5 + 0.5 * fold_height(point, pivots, hang.fold_length_m, seed);
        point.place += hang.freely(point) * hang.folds_m * std::max(0.0, height) * point.normal;
    }
    set_normals(folded);
    return folded;
}

Sheet raised(Sheet sheet, double by_m) {
    for (SheetPoint& point : sheet.points) point.place += by_m * point.normal;
    return sheet;
}

}  // namespace understudy
