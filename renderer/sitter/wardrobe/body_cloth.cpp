#include "sitter/wardrobe/body_cloth.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "sitter/wardrobe/folds.h"
#include "sitter/wardrobe/tension.h"

namespace understudy {
namespace {

constexpr double kSmooth = 0.020;  // cloth has no creases narrower than this but its folds

// A skin drawn tight over the body with some ease: it touches what stands out and spans what lies between.
std::vector<Double3> spanned(const ClothSheet& body, const Hang& hang, const std::vector<double>& freely) {
    std::vector<Double3> least;
    for (std::size_t v = 0; v < body.points.size(); ++v) {
        const SheetPoint& point = body.points[v];
        least.push_back(point.skin + (hang.clearance_m + freely[v] * hang.ease_m) * point.normal);
    }
    const Tension tension(body);
    auto places = tension.drawn(least, hang.reach_m, [&](std::size_t v, const Double3& drawn) {
        const Double3& normal = body.points[v].normal;
        const double under = std::min(0.0, glm::dot(drawn - least[v], normal));
        return glm::mix(least[v], drawn - under * normal, freely[v]);
    });
    // What lies on the body is as crumpled as the body's points are. Twice: drawn once, a place that it rests on leaves
    // a point behind, as a tent does its pole.
    const auto smooth = tension.unfolded(tension.drawn(tension.drawn(places, kSmooth), kSmooth), 10);
    for (std::size_t v = 0; v < places.size(); ++v) places[v] = glm::mix(places[v], smooth[v], freely[v]);
    return places;
}

}  // namespace

ClothSheet body_sheet(const RefinedHead& head) {
    const SkinnedMesh skin = skin_mesh(head);
    const auto normals = smooth_normals(skin.positions, skin.triangles);
    ClothSheet sheet;
    std::vector<std::uint32_t> numbers(skin.positions.size(), std::numeric_limits<std::uint32_t>::max());
    const auto number_of = [&](std::uint32_t v) {
        if (numbers[v] == std::numeric_limits<std::uint32_t>::max()) {
            numbers[v] = static_cast<std::uint32_t>(sheet.points.size());
            sheet.points.push_back({skin.positions[v], skin.positions[v], normals[v], skin.weights[v], v});
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

ClothSheet laid(const ClothSheet& body, const Hang& hang, const BonePivots& pivots, unsigned seed) {
    std::vector<double> freely;
    for (const SheetPoint& point : body.points) freely.push_back(hang.freely(point));
    const auto places = spanned(body, hang, freely);
    ClothSheet sheet = body;
    for (std::size_t v = 0; v < sheet.points.size(); ++v) {
        SheetPoint& point = sheet.points[v];
        point.place = places[v];
    }
    set_normals(sheet);
    ClothSheet folded = sheet;
    for (std::size_t v = 0; v < folded.points.size(); ++v) {
        SheetPoint& point = folded.points[v];
        // Folds stand out from the cloth: none may dip into the skin.
        const double height = 0.5 + 0.5 * fold_height(point, pivots, hang.fold_length_m, seed);
        point.place += freely[v] * hang.folds_m * std::max(0.0, height) * body.points[v].normal;
    }
    set_normals(folded);
    return folded;
}

void hold_in(SkinnedMesh& mesh, ClothSheet& body, const Outline& worn) {
    constexpr double kWidth = 0.034;
    constexpr int kRounds = 30;
    constexpr double kNormals = 0.020;  // what was a bump is now crumpled; cloth lies over it by an even normal
    constexpr double kOver = 0.03;      // from the garment's edge on
    const Tension tension(body);
    std::vector<Double3> skin;
    for (const SheetPoint& point : body.points) skin.push_back(point.skin);
    const auto even = tension.unfolded(tension.drawn(tension.drawn(skin, kWidth), kWidth), kRounds);
    std::vector<double> held;
    for (std::size_t v = 0; v < skin.size(); ++v) {
        SheetPoint& point = body.points[v];
        // The trunk alone: an arm is too thin to lose so much.
        const double arm = static_cast<double>(point.weights[kLeftArm]) + static_cast<double>(point.weights[kRightArm]);
        held.push_back(smooth_step(-worn(point) / kOver) * smooth_step(1.0 - 2.0 * arm));
        point.skin = point.place = glm::mix(skin[v], even[v], held[v]);
        mesh.positions[point.vertex] = point.place;
    }
    set_normals(body);
    std::vector<Double3> normals;
    for (const SheetPoint& point : body.points) normals.push_back(point.normal);
    const auto even_normals = tension.drawn(normals, kNormals);
    for (std::size_t v = 0; v < skin.size(); ++v) {
        body.points[v].normal = glm::normalize(glm::mix(normals[v], even_normals[v], held[v]));
    }
}

ClothSheet raised(ClothSheet sheet, double by_m) {
    for (SheetPoint& point : sheet.points) point.place += by_m * point.normal;
    return sheet;
}

}  // namespace understudy
