#include "sitter/wardrobe/sheet.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <utility>

namespace understudy {
namespace {

using Triangle = std::array<std::uint32_t, 3>;
constexpr std::uint32_t kNone = std::numeric_limits<std::uint32_t>::max();

SheetPoint between(const SheetPoint& a, const SheetPoint& b, double t) {
    SheetPoint point;
    point.place = glm::mix(a.place, b.place, t);
    point.skin = glm::mix(a.skin, b.skin, t);
    point.normal = glm::normalize(glm::mix(a.normal, b.normal, t));
    for (std::size_t k = 0; k < kBoneCount; ++k) {
        const auto from = static_cast<double>(a.weights.at(k));
        const auto to = static_cast<double>(b.weights.at(k));
        point.weights.at(k) = static_cast<float>((1.0 - t) * from + t * to);
    }
    return point;
}

class Cutter {
  public:
    Cutter(const ClothSheet& whole, const Outline& outline) : whole_(whole), moved_(whole.points.size(), kNone) {
        for (const SheetPoint& point : whole.points) outside_.push_back(outline(point));
    }

    ClothSheet cut() {
        for (const Triangle& t : whole_.triangles) add(t);
        return std::move(part_);
    }

  private:
    std::uint32_t keep(std::uint32_t v) {
        if (moved_[v] == kNone) {
            moved_[v] = static_cast<std::uint32_t>(part_.points.size());
            part_.points.push_back(whole_.points[v]);
        }
        return moved_[v];
    }

    // Where the outline crosses an edge.
    std::uint32_t crossing(std::uint32_t a, std::uint32_t b) {
        if (a > b) std::swap(a, b);
        const auto number = static_cast<std::uint32_t>(part_.points.size());
        const auto [found, is_new] = crossings_.emplace(std::pair{a, b}, number);
        if (!is_new) return found->second;
        // Slivers are avoided: what is nearly at a corner is a hair away from it.
        const double t = std::clamp(outside_[a] / (outside_[a] - outside_[b]), 0.02, 0.98);
        part_.points.push_back(between(whole_.points[a], whole_.points[b], t));
        return number;
    }

    void add(const Triangle& t) {
        std::array<bool, 3> in{};
        int count = 0;
        for (std::size_t k = 0; k < 3; ++k) {
            in.at(k) = outside_[t.at(k)] < 0.0;
            count += in.at(k) ? 1 : 0;
        }
        if (count == 0) return;
        if (count == 3) {
            part_.triangles.push_back({keep(t[0]), keep(t[1]), keep(t[2])});
            return;
        }
        std::size_t lone = 0;
        while (in.at(lone) != (count == 1)) ++lone;
        const auto a = t.at(lone);
        const auto b = t.at((lone + 1) % 3);
        const auto c = t.at((lone + 2) % 3);
        const auto ab = crossing(a, b);
        const auto ac = crossing(a, c);
        if (count == 1) {
            part_.triangles.push_back({keep(a), ab, ac});
        } else {
            part_.triangles.push_back({ab, keep(b), keep(c)});
            part_.triangles.push_back({ab, keep(c), ac});
        }
    }

    const ClothSheet& whole_;
    std::vector<double> outside_;
    std::vector<std::uint32_t> moved_;
    std::map<std::pair<std::uint32_t, std::uint32_t>, std::uint32_t> crossings_;
    ClothSheet part_;
};

// The directed edges that have a triangle on one side only.
std::vector<std::pair<std::uint32_t, std::uint32_t>> border(const ClothSheet& sheet) {
    std::vector<std::pair<std::uint32_t, std::uint32_t>> edges;
    for (const Triangle& t : sheet.triangles) {
        for (std::size_t k = 0; k < 3; ++k) edges.emplace_back(t.at(k), t.at((k + 1) % 3));
    }
    std::sort(edges.begin(), edges.end());
    std::vector<std::pair<std::uint32_t, std::uint32_t>> alone;
    for (const auto& edge : edges) {
        if (!std::binary_search(edges.begin(), edges.end(), std::pair{edge.second, edge.first})) alone.push_back(edge);
    }
    return alone;
}

// Which points lie within a distance of the border: by steps along edges, nearest first would be exact; sweeping until
// nothing changes is enough here.
std::vector<bool> near_border(const ClothSheet& sheet, double reach) {
    std::vector<double> distance(sheet.points.size(), 1e9);
    for (const auto& [a, b] : border(sheet)) distance[a] = distance[b] = 0.0;
    for (bool changed = true; changed;) {
        changed = false;
        for (const Triangle& t : sheet.triangles) {
            for (std::size_t k = 0; k < 3; ++k) {
                const auto a = t.at(k);
                const auto b = t.at((k + 1) % 3);
                const double step = glm::distance(sheet.points[a].place, sheet.points[b].place);
                for (const auto& [from, to] : {std::pair{a, b}, std::pair{b, a}}) {
                    if (distance[from] + step >= distance[to] || distance[from] > reach) continue;
                    distance[to] = distance[from] + step;
                    changed = true;
                }
            }
        }
    }
    std::vector<bool> near;
    near.reserve(distance.size());
    for (const double d : distance) near.push_back(d <= reach);
    return near;
}

constexpr std::uint32_t kHemSteps = 6;  // round the edge

class Seamstress {
  public:
    Seamstress(SkinnedMesh& mesh, const ClothSheet& sheet, double thickness, Zone zone)
        : mesh_(mesh), sheet_(sheet), thickness_(thickness), zone_(zone), first_(mesh.positions.size()) {}

    void lay_outside() {
        for (const SheetPoint& point : sheet_.points) add_point(point.place, point.weights);
        for (const Triangle& t : sheet_.triangles) add_triangle(outside(t[0]), outside(t[1]), outside(t[2]));
    }

    void lay_inside(double reach) {
        const auto near = near_border(sheet_, reach);
        const auto base = static_cast<std::uint32_t>(mesh_.positions.size());
        std::vector<std::uint32_t> numbers(sheet_.points.size(), kNone);
        std::uint32_t count = 0;
        for (std::size_t v = 0; v < sheet_.points.size(); ++v) {
            if (!near[v]) continue;
            numbers[v] = base + count++;
            add_point(sheet_.points[v].place - thickness_ * sheet_.points[v].normal, sheet_.points[v].weights);
        }
        for (const Triangle& t : sheet_.triangles) {
            if (near[t[0]] && near[t[1]] && near[t[2]]) add_triangle(numbers[t[0]], numbers[t[2]], numbers[t[1]]);
        }
        inside_ = std::move(numbers);
    }

    void round_the_edge() {
        const auto edges = border(sheet_);
        std::map<std::uint32_t, Double3> outward;
        for (const auto& [a, b] : edges) {
            const Double3 along = sheet_.points[b].place - sheet_.points[a].place;
            for (const auto v : {a, b}) outward[v] += glm::cross(along, sheet_.points[v].normal);
        }
        std::map<std::uint32_t, std::uint32_t> hems;  // the first of a point's row round the edge
        for (const auto& [v, direction] : outward) hems[v] = add_row(v, direction);
        for (const auto& [a, b] : edges) {
            for (std::uint32_t k = 0; k < kHemSteps; ++k) {
                const auto a0 = step_of(hems, a, k);
                const auto a1 = step_of(hems, a, k + 1);
                const auto b0 = step_of(hems, b, k);
                const auto b1 = step_of(hems, b, k + 1);
                add_triangle(b0, a0, a1);
                add_triangle(b0, a1, b1);
            }
        }
    }

  private:
    std::uint32_t outside(std::uint32_t v) const { return static_cast<std::uint32_t>(first_) + v; }

    std::uint32_t step_of(const std::map<std::uint32_t, std::uint32_t>& hems, std::uint32_t v, std::uint32_t k) const {
        if (k == 0) return outside(v);
        return k == kHemSteps ? inside_[v] : hems.at(v) + k - 1;
    }

    // From the outside, half round the edge, to the inside.
    std::uint32_t add_row(std::uint32_t v, const Double3& outward) {
        const SheetPoint& point = sheet_.points[v];
        const Double3 level = outward - glm::dot(outward, point.normal) * point.normal;
        const double length = glm::length(level);
        const Double3 out = length > 0.0 ? level / length : Double3(0.0);
        const double radius = 0.5 * thickness_;
        const Double3 middle = point.place - radius * point.normal;
        const auto first = static_cast<std::uint32_t>(mesh_.positions.size());
        for (std::uint32_t k = 1; k < kHemSteps; ++k) {
            const double angle = kPiDouble * k / kHemSteps;
            add_point(middle + radius * (std::cos(angle) * point.normal + std::sin(angle) * out), point.weights);
        }
        return first;
    }

    void add_point(const Double3& place, const BoneWeights& weights) {
        mesh_.positions.push_back(place);
        mesh_.weights.push_back(weights);
    }

    void add_triangle(std::uint32_t a, std::uint32_t b, std::uint32_t c) {
        mesh_.triangles.push_back({a, b, c});
        mesh_.zones.push_back(zone_);
    }

    SkinnedMesh& mesh_;
    const ClothSheet& sheet_;
    double thickness_;
    Zone zone_;
    std::size_t first_;
    std::vector<std::uint32_t> inside_;
};

}  // namespace

ClothSheet cut(const ClothSheet& sheet, const Outline& outline) { return Cutter(sheet, outline).cut(); }

void set_normals(ClothSheet& sheet) {
    std::vector<Double3> places;
    for (const SheetPoint& point : sheet.points) places.push_back(point.place);
    const auto normals = smooth_normals(places, sheet.triangles);
    for (std::size_t v = 0; v < sheet.points.size(); ++v) sheet.points[v].normal = normals[v];
}

void sew(SkinnedMesh& mesh, const ClothSheet& sheet, double thickness, Zone zone, double inside_from_edge) {
    Seamstress seamstress(mesh, sheet, thickness, zone);
    seamstress.lay_outside();
    seamstress.lay_inside(inside_from_edge);
    seamstress.round_the_edge();
}

ClothSheet grid_sheet(const std::vector<SheetPoint>& points, std::size_t columns, bool closed) {
    ClothSheet sheet{points, {}};
    const std::size_t rows = points.size() / columns;
    for (std::size_t r = 0; r + 1 < rows; ++r) {
        for (std::size_t c = 0; c + (closed ? 0 : 1) < columns; ++c) {
            const auto a = static_cast<std::uint32_t>(r * columns + c);
            const auto b = static_cast<std::uint32_t>(r * columns + (c + 1) % columns);
            const auto below_a = static_cast<std::uint32_t>(a + columns);
            const auto below_b = static_cast<std::uint32_t>(b + columns);
            sheet.triangles.push_back({a, b, below_b});
            sheet.triangles.push_back({a, below_b, below_a});
        }
    }
    set_normals(sheet);
    return sheet;
}

}  // namespace understudy
