#include "sitter/skin_map.h"

#include <algorithm>
#include <cmath>

#include "base/mottle.h"

namespace understudy {
namespace {

// The regions' shares are in proportion to what is seen on faces: cheeks, nose and ears carry more blood and the
// forehead's middle, nose and chin more oil than the rest. Common practice among painters and make-up artists; the
// numbers are invented, no source.
struct Region {
    float melanin, blood, roughness, coat, pores;
};
constexpr Region kCheekCast{1.0F, 1.55F, 1.0F, 0.95F, 0.8F};
constexpr Region kNoseCast{1.0F, 1.6F, 0.85F, 1.0F, 1.0F};
constexpr Region kChinCast{1.0F, 1.15F, 0.92F, 1.0F, 0.6F};
constexpr Region kForeheadCast{1.03F, 0.85F, 0.88F, 1.0F, 0.5F};
constexpr Region kLidCast{1.12F, 1.35F, 0.95F, 0.9F, 0.05F};
// The lids' edges are pink on people of any skin: behind them lies their lining, full of vessels and with less melanin.
// A millimetre thick, they would send back more than flat skin, and paler.
constexpr Region kLidEdgeCast{0.5F, 4.5F, 0.95F, 0.9F, 0.0F};
// Round them a lid is thin, and muscle shines through it.
constexpr Region kLidRimCast{1.05F, 3.2F, 0.95F, 0.9F, 0.05F};
constexpr Region kEarCast{0.95F, 1.8F, 1.1F, 0.8F, 0.1F};
constexpr Region kNeckCast{0.95F, 0.85F, 1.15F, 0.8F, 0.2F};
// Hair under the skin of a shaven beard looks grey through it.
constexpr Region kBeardCast{1.15F, 0.9F, 1.05F, 0.95F, 0.6F};
// Lips show more blood than the skin round them and hardly less melanin: on dark faces they are about as dark.
constexpr Region kLipCast{0.9F, 5.5F, 0.62F, 1.0F, 0.0F};

constexpr float kMostBlood = 0.2F;

void lean(SkinCast& cast, const Region& region, float share) {
    const auto toward = [share](float& value, float goal) { value += share * (goal - value); };
    toward(cast.melanin, region.melanin);
    toward(cast.blood, region.blood);
    toward(cast.roughness, region.roughness);
    toward(cast.coat, region.coat);
    toward(cast.pores, region.pores);
}

float bell(double distance, double width) {
    return static_cast<float>(std::exp(-0.5 * (distance / width) * (distance / width)));
}

Double3 position_of(const SkinPlace& place, const SkinnedMesh& mesh) {
    Double3 sum(0.0);
    for (std::size_t i = 0; i < 3; ++i) sum += place.share[i] * mesh.positions[mesh.triangles[place.triangle][i]];
    return sum;
}

// 1 on vertices of a zone and 0 elsewhere, evened out with the neighbours' mean a few times over.
std::vector<float> zone_share(const SkinnedMesh& mesh, Zone zone, int rounds) {
    std::vector<float> share(mesh.positions.size(), 0.0F);
    std::vector<float> count(mesh.positions.size(), 0.0F);
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        for (const auto v : mesh.triangles[t]) {
            share[v] += mesh.zones[t] == zone ? 1.0F : 0.0F;
            count[v] += 1.0F;
        }
    }
    for (std::size_t v = 0; v < share.size(); ++v) share[v] /= std::max(1.0F, count[v]);
    for (int round = 0; round < rounds; ++round) {
        std::vector<float> sum = share;
        std::fill(count.begin(), count.end(), 1.0F);
        for (const auto& corners : mesh.triangles) {
            // Far from the zone's edge there is nothing to even out.
            if (share[corners[0]] == share[corners[1]] && share[corners[1]] == share[corners[2]]) continue;
            const float all = share[corners[0]] + share[corners[1]] + share[corners[2]];
            for (const auto v : corners) {
                sum[v] += 0.5F * (all - share[v]);
                count[v] += 1.0F;
            }
        }
        for (std::size_t v = 0; v < share.size(); ++v) share[v] = sum[v] / count[v];
    }
    return share;
}

// Where the tears lie, along the lids' inner edges.
std::vector<Double3> lid_edges(const SkinnedMesh& mesh) {
    std::vector<Double3> edges;
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        if (mesh.zones[t] != Zone::kTearLine) continue;
        // Straight ahead, before the tears are laid out, all vertices across them are at one place.
        const Double3& p = mesh.positions[mesh.triangles[t].front()];
        if (edges.empty() || edges.back() != p) edges.push_back(p);
    }
    return edges;
}

// How far the skin lies beyond a lid's edge, which is as thick as it is: 0 on it.
double beyond_lid_edge(const std::vector<Double3>& edges, const std::array<Double3, 2>& eyes, const Double3& p) {
    constexpr double kNear = 0.020;
    constexpr double kThickness = 0.0010;
    if (std::none_of(eyes.begin(), eyes.end(), [&](const Double3& eye) { return glm::distance(p, eye) < kNear; })) {
        return kNear;
    }
    double nearest = kNear + kThickness;
    for (const Double3& edge : edges) nearest = std::min(nearest, glm::distance(p, edge));
    return std::max(0.0, nearest - kThickness);
}

void redden_lids(SkinCast& cast, double beyond_edge) {
    constexpr double kRimRunsOut = 0.0024;
    constexpr double kEdgeRunsOut = 0.0009;
    lean(cast, kLidRimCast, bell(beyond_edge, kRimRunsOut));
    lean(cast, kLidEdgeCast, bell(beyond_edge, kEdgeRunsOut));
}

struct Marks {
    Double3 forehead, nose_tip, chin, throat;
    std::array<Double3, 2> cheeks;
    std::array<Double3, 2> eyes;
};

// Lip, chin and jaw, up to before the ears and down to the throat.
float beard_area(const Marks& marks, const Double3& p) {
    const double under_nose = smooth_step((marks.nose_tip.y - 0.008 - p.y) / 0.012);
    const double over_throat = smooth_step((p.y - marks.throat.y + 0.010) / 0.025);
    const double jaw = smooth_step((p.z - marks.chin.z + 0.085) / 0.02);
    // Cheeks stay free above a line from the nose's wing down to the jaw's corner.
    const double under_cheek = smooth_step((marks.nose_tip.y - 0.012 - 0.35 * std::abs(p.x) - p.y) / 0.02);
    return static_cast<float>(under_nose * over_throat * jaw * under_cheek);
}

// What the face's landmarks call for at a place of the straight head.
SkinCast face_cast(const Marks& marks, const Double3& p, float man) {
    SkinCast cast;
    lean(cast, kForeheadCast, bell(glm::distance(p, marks.forehead + Double3(0.0, 0.01, 0.0)), 0.030));
    for (const Double3& cheek : marks.cheeks) lean(cast, kCheekCast, bell(glm::distance(p, cheek), 0.018));
    lean(cast, kChinCast, bell(glm::distance(p, marks.chin), 0.014));
    lean(cast, kNoseCast, bell(glm::distance(p, marks.nose_tip), 0.012));
    lean(cast, kBeardCast, man * beard_area(marks, p));
    for (const Double3& eye : marks.eyes) {
        const double off = std::max(0.0, glm::distance(p, eye) - 0.014);
        lean(cast, kLidCast, bell(off, 0.0045));
    }
    const double below = (marks.chin.y - 0.015 - p.y) / 0.03;
    lean(cast, kNeckCast, static_cast<float>(smooth_step(below)));
    return cast;
}

// Skin is never even: blood lies in blotches of a centimetre and of a few millimetres, melanin in finer ones.
void mottle(SkinCast& cast, const Double3& p) {
    const Vec3 place(p);
    const float wide = mottle_at(place / 0.011F);
    const float fine = mottle_at(place / 0.0032F + Vec3(31.0F, 7.0F, 19.0F));
    const float brown = mottle_at(place / 0.0046F + Vec3(3.0F, 57.0F, 11.0F));
    cast.blood *= std::exp(0.22F * wide + 0.16F * fine);
    cast.melanin *= std::exp(0.10F * brown + 0.06F * wide);
}

}  // namespace

std::vector<SkinCast> cast_skin(const SkinnedMesh& mesh, const std::optional<SkinPlaces>& places,
                                const std::optional<std::array<Double3, 2>>& eyes, double man) {
    std::vector<SkinCast> casts(mesh.positions.size());
    if (!places || !eyes) return casts;
    const auto at = [&](const SkinPlace& place) { return position_of(place, mesh); };
    const Marks marks{at(places->forehead),
                      at(places->nose_tip),
                      at(places->chin),
                      at(places->throat),
                      {at(places->cheek_camera_left), at(places->cheek_camera_right)},
                      *eyes};
    const std::vector<float> lips = zone_share(mesh, Zone::kLips, 3);
    const std::vector<float> ears = zone_share(mesh, Zone::kEar, 6);
    const std::vector<Double3> edges = lid_edges(mesh);
    for (std::size_t v = 0; v < casts.size(); ++v) {
        casts[v] = face_cast(marks, mesh.positions[v], static_cast<float>(man));
        lean(casts[v], kEarCast, ears[v]);
        lean(casts[v], kLipCast, lips[v]);
        redden_lids(casts[v], beyond_lid_edge(edges, *eyes, mesh.positions[v]));
        casts[v].lip = lips[v];
        mottle(casts[v], mesh.positions[v]);
    }
    return casts;
}

SkinSpot spot_of(const SkinCast& cast, double melanin, double blood, double shine) {
    // Half way: clean skin. Powder scatters what the oil would mirror, oil and sweat make the coat smooth.
    const float roughness = kSkinRoughness * static_cast<float>(std::pow(1.65, 1.0 - 2.0 * shine));
    const float coat = static_cast<float>(0.5 + 0.5 * std::min(1.0, 2.0 * shine));
    SkinSpot spot;
    spot.melanin = std::clamp(cast.melanin * static_cast<float>(melanin), 0.0F, 0.5F);
    spot.blood = std::clamp(cast.blood * static_cast<float>(blood), 0.0F, kMostBlood);
    spot.roughness = std::clamp(cast.roughness * roughness, kLeastSkinRoughness, kMostSkinRoughness);
    spot.coat = cast.coat * coat;
    return spot;
}

}  // namespace understudy
