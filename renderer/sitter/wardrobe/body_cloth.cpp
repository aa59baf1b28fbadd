#include "sitter/wardrobe/body_cloth.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "sitter/wardrobe/folds.h"

namespace understudy {
namespace {

// Over what lies under it, a cloth goes as over something soft: what is narrower than this does not show.
constexpr double kSoft = 0.014;

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

// Means over neighbours, a round at a time: each round widens them by about half an edge's square.
class Evening {
  public:
    explicit Evening(const Sheet& sheet) : neighbours_(neighbours_of(sheet)), edge_(mean_edge(sheet)) {}

    int rounds_for(double width) const { return static_cast<int>(std::ceil(2.0 * width * width / (edge_ * edge_))); }

    // after(vertex, its mean): where it goes.
    template <class After>
    void round(std::vector<Double3>& places, const After& after) const {
        std::vector<Double3> next(places.size());
        for (std::size_t v = 0; v < places.size(); ++v) {
            Double3 sum(0.0);
            for (const auto w : neighbours_[v]) sum += places[w];
            next[v] = after(v, 0.5 * places[v] + 0.5 / static_cast<double>(neighbours_[v].size()) * sum);
        }
        places.swap(next);
    }

  private:
    std::vector<std::vector<std::uint32_t>> neighbours_;
    double edge_;
};

// A skin drawn tight over the body with some ease: it touches what stands out and spans what lies between.
std::vector<Double3> spanned(const Sheet& body, const Hang& hang, const std::vector<double>& freely) {
    const Evening evening(body);
    std::vector<Double3> soft;
    for (const SheetPoint& point : body.points) soft.push_back(point.skin);
    for (int i = evening.rounds_for(kSoft); i > 0; --i) {
        evening.round(soft, [](std::size_t, const Double3& mean) { return mean; });
    }
    for (std::size_t v = 0; v < soft.size(); ++v) {
        const SheetPoint& point = body.points[v];
        soft[v] =
            glm::mix(point.skin, soft[v], freely[v]) + (hang.clearance_m + freely[v] * hang.ease_m) * point.normal;
    }
    auto places = soft;
    for (int i = evening.rounds_for(hang.reach_m); i > 0; --i) {
        evening.round(places, [&](std::size_t v, const Double3& mean) {
            const Double3& normal = body.points[v].normal;
            const double under = std::min(0.0, glm::dot(mean - soft[v], normal));
            return glm::mix(soft[v], mean - under * normal, freely[v]);
        });
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
    std::vector<double> freely;
    for (const SheetPoint& point : body.points) freely.push_back(hang.freely(point));
    const auto places = spanned(body, hang, freely);
    Sheet sheet = body;
    for (std::size_t v = 0; v < sheet.points.size(); ++v) {
        SheetPoint& point = sheet.points[v];
        const double above = glm::dot(places[v] - point.skin, point.normal);
        point.place = places[v] + std::max(0.0, hang.clearance_m - above) * point.normal;
    }
    set_normals(sheet);
    Sheet folded = sheet;
    for (std::size_t v = 0; v < folded.points.size(); ++v) {
        SheetPoint& point = folded.points[v];
        // Folds stand out from the cloth: none may dip into the skin.
        const double height = 0.5 + 0.5 * fold_height(point, pivots, hang.fold_length_m, seed);
        point.place += freely[v] * hang.folds_m * std::max(0.0, height) * point.normal;
    }
    set_normals(folded);
    return folded;
}

Sheet raised(Sheet sheet, double by_m) {
    for (SheetPoint& point : sheet.points) point.place += by_m * point.normal;
    return sheet;
}

}  // namespace understudy
