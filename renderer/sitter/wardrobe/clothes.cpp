#include "sitter/wardrobe/clothes.h"

#include <algorithm>
#include <cmath>

#include "sitter/wardrobe/body_cloth.h"
#include "sitter/wardrobe/collar.h"
#include "sitter/wardrobe/jacket.h"
#include "sitter/wardrobe/necklines.h"

namespace understudy {
namespace {

constexpr double kInside = 0.015;  // how far from an edge the inside of a cloth is made

// Fits round the neck and hangs freely from a hand's breadth below.
std::function<double(const SheetPoint&)> freely_below(const Outline& neck, double over_m) {
    return [neck, over_m](const SheetPoint& point) { return smooth_step(-neck(point) / over_m); };
}

Outline within(const Outline& outline, double margin) {
    return [outline, margin](const SheetPoint& point) { return outline(point) + margin; };
}

// A strip along an edge, so many metres wide.
Outline strip(const Outline& edge, double width) {
    return [edge, width](const SheetPoint& point) { return std::max(edge(point), -edge(point) - width); };
}

void wear_crew_neck(SkinnedMesh& mesh, const ClothSheet& body, const BonePivots& pivots) {
    const Outline neck = crew_neckline(pivots[kNeck1]);
    const ClothSheet layer = laid(body, {0.0022, 0.0060, 0.060, 0.0050, 0.15, freely_below(neck, 0.06)}, pivots, 11);
    sew(mesh, cut(layer, within(neck, 0.006)), 0.0012, Zone::kTop, kInside);
    sew(mesh, cut(raised(layer, 0.0014), strip(neck, 0.019)), 0.0028, Zone::kCollar, kInside);
}

void wear_high_neck(SkinnedMesh& mesh, const ClothSheet& body, const BonePivots& pivots) {
    const Outline top = high_neckline(pivots[kNeck1]);
    const ClothSheet layer = laid(
        body, {0.0022, 0.0070, 0.060, 0.0055, 0.17, freely_below(crew_neckline(pivots[kNeck1]), 0.06)}, pivots, 12);
    constexpr double kTurnedDown = 0.052;
    sew(mesh, cut(layer, within(top, 0.6 * kTurnedDown)), 0.0014, Zone::kTop, kInside);
    // The part turned down stands off a little more toward its lower edge.
    ClothSheet roll = layer;
    for (SheetPoint& point : roll.points) {
        const double down = std::clamp(-top(point) / kTurnedDown, 0.0, 1.0);
        point.place += (0.0035 + 0.0025 * std::sin(kPiDouble * std::min(1.0, 0.25 + 0.75 * down))) * point.normal;
    }
    sew(mesh, cut(roll, strip(top, kTurnedDown)), 0.0052, Zone::kCollar, kInside);
}

void wear_bare_shoulders(SkinnedMesh& mesh, const ClothSheet& body, const BonePivots& pivots) {
    const Outline edge = strapless_edge(pivots);
    const ClothSheet layer = laid(body, {0.0020, 0.0045, 0.050, 0.0030, 0.15, freely_below(edge, 0.05)}, pivots, 13);
    sew(mesh, cut(layer, within(edge, 0.004)), 0.0014, Zone::kTop, kInside);
    sew(mesh, cut(raised(layer, 0.0010), strip(edge, 0.014)), 0.0026, Zone::kTop, kInside);
}

void wear_shirt(SkinnedMesh& mesh, const ClothSheet& layer, const BonePivots& pivots, const CollarCut& collar_cut) {
    const ShirtFront front;
    const Outline neck = collar_seam(pivots[kNeck1]);
    const Outline open = shirt_opening(pivots[kNeck1], front);
    sew(mesh, cut(layer, open), 0.0008, Zone::kTop, kInside);
    sew(mesh, cut(raised(layer, 0.0009), placket(pivots[kNeck1], front)), 0.0016, Zone::kTop, kInside);
    const auto seam = neck_seam(layer, neck, pivots[kNeck1], front.collar_ends_deg, 121);
    sew(mesh, collar(seam, collar_cut, layer), 0.0016, Zone::kCollar, kInside);
}

ClothSheet shirt_layer(const ClothSheet& body, const BonePivots& pivots) {
    const Outline neck = collar_seam(pivots[kNeck1]);
    return laid(body, {0.0024, 0.0070, 0.070, 0.0065, 0.16, freely_below(neck, 0.06)}, pivots, 14);
}

void wear_jacket(SkinnedMesh& mesh, const ClothSheet& body, const BonePivots& pivots) {
    const ClothSheet shirt = shirt_layer(body, pivots);
    CollarCut tucked;
    tucked.fall_front_m = 0.050;
    tucked.clearance_m = 0.0020;
    wear_shirt(mesh, shirt, pivots, tucked);
    put_on_jacket(mesh, body, pivots);
}

// The least of the outfit's outlines: how deep a place lies under it.
Outline covered_by(Outfit outfit, const BonePivots& pivots) {
    switch (outfit) {
        case Outfit::kCrewNeck:
            return crew_neckline(pivots[kNeck1]);
        case Outfit::kHighNeck:
            return high_neckline(pivots[kNeck1]);
        case Outfit::kBareShoulders:
            return strapless_edge(pivots);
        case Outfit::kOpenCollar:
        case Outfit::kJacket:
            break;
    }
    return shirt_opening(pivots[kNeck1], ShirtFront{});
}

void take_away_hidden_skin(SkinnedMesh& mesh, const RefinedHead& body, const Outline& outline) {
    constexpr double kDeep = 0.03;
    std::vector<bool> hidden;
    for (std::size_t v = 0; v < body.positions.size(); ++v) {
        hidden.push_back(outline({body.positions[v], body.positions[v], {}, body.weights[v]}) < -kDeep);
    }
    std::size_t kept = 0;
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        const auto& k = mesh.triangles[t];
        const bool under = mesh.zones[t] == Zone::kNeck && hidden[k[0]] && hidden[k[1]] && hidden[k[2]];
        if (under) continue;
        mesh.triangles[kept] = k;
        mesh.zones[kept++] = mesh.zones[t];
    }
    mesh.triangles.resize(kept);
    mesh.zones.resize(kept);
}

}  // namespace

Fabric fabric_of(const ClothesSettings& clothes) {
    if (clothes.fabric) return *clothes.fabric;
    switch (clothes.outfit) {
        case Outfit::kHighNeck:
        case Outfit::kJacket:
            return Fabric::kWool;
        case Outfit::kOpenCollar:
            return Fabric::kCotton;
        case Outfit::kCrewNeck:
        case Outfit::kBareShoulders:
            break;
    }
    return Fabric::kJersey;
}

void put_on_clothes(SkinnedMesh& mesh, const RefinedHead& head, const BonePivots& pivots,
                    const ClothesSettings& clothes) {
    const Outline worn = covered_by(clothes.outfit, pivots);
    ClothSheet body = body_sheet(head);
    hold_in(mesh, body, worn);
    take_away_hidden_skin(mesh, head, worn);
    switch (clothes.outfit) {
        case Outfit::kCrewNeck:
            return wear_crew_neck(mesh, body, pivots);
        case Outfit::kHighNeck:
            return wear_high_neck(mesh, body, pivots);
        case Outfit::kOpenCollar:
            return wear_shirt(mesh, shirt_layer(body, pivots), pivots, {});
        case Outfit::kJacket:
            return wear_jacket(mesh, body, pivots);
        case Outfit::kBareShoulders:
            return wear_bare_shoulders(mesh, body, pivots);
    }
}

}  // namespace understudy
