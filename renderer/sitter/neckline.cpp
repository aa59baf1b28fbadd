#include "sitter/neckline.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace understudy {
namespace {

constexpr double kClothThickness = 0.002;
constexpr double kClothEdge = 0.003;  // over which the cloth rises to its thickness

using Triangle = std::array<std::uint32_t, 3>;

// Positive above the neckline: a plane a little under the pit of the throat that rises toward the nape, and to the
// sides as a round neck does.
double above_neckline(const Double3& p, const Double3& neck_base) {
    const double aside = p.x / 0.075;
    return p.y - neck_base.y + 0.062 + 0.55 * (p.z - neck_base.z - 0.087) - 0.030 * aside * aside;
}

struct Cutter {
    SkinnedMesh& mesh;
    std::vector<double> above;  // one a position
    std::map<std::pair<std::uint32_t, std::uint32_t>, std::uint32_t> cuts;

    std::uint32_t cut(std::uint32_t a, std::uint32_t b) {
        if (a > b) std::swap(a, b);
        const auto number = static_cast<std::uint32_t>(mesh.positions.size());
        const auto [found, is_new] = cuts.emplace(std::pair{a, b}, number);
        if (!is_new) return found->second;
        const double t = above[a] / (above[a] - above[b]);
        mesh.positions.push_back(glm::mix(mesh.positions[a], mesh.positions[b], t));
        BoneWeights weights{};
        for (std::size_t k = 0; k < kBoneCount; ++k) {
            weights.at(k) =
                static_cast<float>((1.0 - t) * double{mesh.weights[a].at(k)} + t * double{mesh.weights[b].at(k)});
        }
        mesh.weights.push_back(weights);
        above.push_back(0.0);
        return number;
    }

    void add(const Triangle& triangle, Zone zone) {
        if (triangle[0] == triangle[1] || triangle[1] == triangle[2] || triangle[2] == triangle[0]) return;
        mesh.triangles.push_back(triangle);
        mesh.zones.push_back(zone);
    }

    void add_neck(const Triangle& t) {
        std::array<bool, 3> up{};
        for (std::size_t k = 0; k < 3; ++k) up.at(k) = above[t.at(k)] >= 0.0;
        if (up[0] == up[1] && up[1] == up[2]) {
            add(t, up[0] ? Zone::kNeck : Zone::kTop);
            return;
        }
        std::size_t lone = 0;
        while (up.at(lone) == up.at((lone + 1) % 3) || up.at(lone) == up.at((lone + 2) % 3)) ++lone;
        const auto a = t.at(lone);
        const auto b = t.at((lone + 1) % 3);
        const auto c = t.at((lone + 2) % 3);
        const auto ab = cut(a, b);
        const auto ac = cut(a, c);
        add({a, ab, ac}, up.at(lone) ? Zone::kNeck : Zone::kTop);
        add({ab, b, c}, up.at(lone) ? Zone::kTop : Zone::kNeck);
        add({ab, c, ac}, up.at(lone) ? Zone::kTop : Zone::kNeck);
    }
};

// The quad's two triangles, split along the shorter diagonal.
std::array<Triangle, 2> split(const Quad& q, const std::vector<Double3>& p) {
    if (glm::distance(p[q[0]], p[q[2]]) <= glm::distance(p[q[1]], p[q[3]])) {
        return {Triangle{q[0], q[1], q[2]}, Triangle{q[0], q[2], q[3]}};
    }
    return {Triangle{q[0], q[1], q[3]}, Triangle{q[1], q[2], q[3]}};
}

}  // namespace

std::vector<Double3> smooth_normals(const std::vector<Double3>& positions, const std::vector<Triangle>& triangles) {
    std::vector<Double3> normals(positions.size(), Double3(0.0));
    for (const Triangle& t : triangles) {
        const Double3 n = glm::cross(positions[t[1]] - positions[t[0]], positions[t[2]] - positions[t[0]]);
        for (const auto v : t) normals[v] += n;
    }
    for (Double3& n : normals) {
        const double length = glm::length(n);
        n = length > 0.0 ? n / length : Double3(0.0, 1.0, 0.0);
    }
    return normals;
}

std::vector<Double3> draped(const HeadData& data, std::vector<Double3> positions, const Double3& neck_base) {
    constexpr double kSpan = 0.016;  // of the cloth over hollows and bumps: the width of a Gaussian mean
    constexpr double kGrows = 0.04;  // from the neckline down, until the cloth hangs freely
    std::vector<double> area(positions.size(), 0.0);
    for (const Quad& q : data.quads) {
        const double size =
            0.5 * glm::length(glm::cross(positions[q[2]] - positions[q[0]], positions[q[3]] - positions[q[1]]));
        for (const auto v : q) area[v] += 0.25 * size;
    }
    std::vector<std::uint32_t> cloth;
    for (std::uint32_t v = 0; v < data.weights.size(); ++v) {
        if (data.weights[v][kTrunk] > 0.5F && above_neckline(positions[v], neck_base) < 0.02) cloth.push_back(v);
    }
    auto after = positions;
    for (const auto v : cloth) {
        Double3 sum(0.0);
        double total = 0.0;
        for (const auto w : cloth) {
            const Double3 gap = positions[w] - positions[v];
            const double weight = area[w] * std::exp(-0.5 * glm::dot(gap, gap) / (kSpan * kSpan));
            sum += weight * positions[w];
            total += weight;
        }
        const double depth = std::clamp(-above_neckline(positions[v], neck_base) / kGrows, 0.0, 1.0);
        const double trunk = std::clamp(2.0 * double{data.weights[v][kTrunk]} - 1.0, 0.0, 1.0);
        if (total > 0.0) after[v] = glm::mix(positions[v], sum / total, depth * trunk);
    }
    return after;
}

SkinnedMesh dress(const RefinedHead& head, const Double3& neck_base) {
    SkinnedMesh mesh{head.positions, head.weights, {}, {}};
    Cutter cutter{mesh, {}, {}};
    for (const Double3& p : mesh.positions) cutter.above.push_back(above_neckline(p, neck_base));
    for (std::size_t f = 0; f < head.quads.size(); ++f) {
        for (const Triangle& triangle : split(head.quads[f], head.positions)) {
            if (head.zones[f] == Zone::kNeck) {
                cutter.add_neck(triangle);
            } else {
                cutter.add(triangle, head.zones[f]);
            }
        }
    }
    const auto normals = smooth_normals(mesh.positions, mesh.triangles);
    std::vector<bool> is_cloth(mesh.positions.size(), false);
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        if (mesh.zones[t] != Zone::kTop) continue;
        for (const auto v : mesh.triangles[t]) is_cloth[v] = true;
    }
    for (std::size_t v = 0; v < mesh.positions.size(); ++v) {
        if (!is_cloth[v]) continue;
        mesh.positions[v] += std::clamp(-cutter.above[v] / kClothEdge, 0.0, 1.0) * kClothThickness * normals[v];
    }
    return mesh;
}

}  // namespace understudy
