#include "sitter/lids.h"

#include <algorithm>
#include <cmath>

#include "sitter/eye_surface.h"
#include "sitter/lid_margins.h"
#include "sitter/lid_opening.h"
#include "sitter/skin_follow.h"

namespace understudy {
namespace {

constexpr double kReach = 0.024;  // round the eye's centre, of what may move
constexpr Falloff kWhenLaid{0.001, 0.009};
// A lid that goes up with the gaze takes the fold over it along, which would hang before the eye otherwise.
constexpr double kFoldFollows = 2.4;  // so much farther for each millimetre that the pupil goes up
constexpr double kFarthestFold = 0.021;
// A lid that closes takes its skin from as far up as the fold over it.
constexpr Falloff kWhenDrawn{0.001, 0.013};
constexpr double kSkinSlope = 0.6;  // how fast the least height of skin above the eye grows from the margin
constexpr double kSocketClearance = 0.00002;
constexpr double kLeastSkin = 0.0010;

std::vector<Double3> pick(const std::vector<Double3>& positions, const std::vector<std::uint32_t>& which) {
    std::vector<Double3> picked;
    picked.reserve(which.size());
    for (const auto v : which) picked.push_back(positions[v]);
    return picked;
}

std::vector<std::vector<std::uint32_t>> neighbours_of(std::size_t vertices, const std::vector<Quad>& quads) {
    std::vector<std::vector<std::uint32_t>> neighbours(vertices);
    for (const Quad& quad : quads) {
        for (std::size_t k = 0; k < 4; ++k) neighbours[quad.at(k)].push_back(quad.at((k + 1) % 4));
    }
    return neighbours;  // one way round is enough: every inner edge is met from both sides
}

constexpr double kCornerReach = 0.0055;
constexpr int kCornerRounds = 12;

// Skin round both corners; the inner edge is left where it was laid.
std::vector<CornerVertex> corner_vertices(const std::vector<Double3>& positions, const RefinedEyeMargins& margins,
                                          const std::vector<bool>& movable,
                                          const std::vector<std::vector<std::uint32_t>>& neighbours) {
    const auto by_x = [&](std::uint32_t a, std::uint32_t b) { return positions[a].x < positions[b].x; };
    const auto [low, high] = std::minmax_element(margins.outer.begin(), margins.outer.end(), by_x);
    std::vector<CornerVertex> corners;
    for (std::uint32_t v = 0; v < positions.size(); ++v) {
        if (!movable[v]) continue;
        const double near =
            std::min(glm::distance(positions[v], positions[*low]), glm::distance(positions[v], positions[*high]));
        if (near < kCornerReach) corners.push_back({v, neighbours[v], 1.0 - smooth_step(near / kCornerReach)});
    }
    return corners;
}

void even_out_corners(const LidRegion& region, const Eye& eye, std::vector<Double3>& positions) {
    std::vector<Double3> moved(region.corners.size());
    for (int round = 0; round < kCornerRounds; ++round) {
        for (std::size_t i = 0; i < region.corners.size(); ++i) {
            const auto& corner = region.corners[i];
            Double3 mean(0.0);
            for (const auto n : corner.neighbours) mean += positions[n] / static_cast<double>(corner.neighbours.size());
            moved[i] = glm::mix(positions[corner.vertex], mean, corner.strength);
            if (height_above_eye(eye, moved[i]) < kLidClearance) moved[i] = at_height(eye, moved[i], kLidClearance);
        }
        for (std::size_t i = 0; i < moved.size(); ++i) positions[region.corners[i].vertex] = moved[i];
    }
}

// Never nearer to the eye than skin can be; the socket's own skin behind the lids may lie on it.
double least_height(bool on_skin_side, double to_inner) {
    return on_skin_side ? std::min(kLeastSkin, kLidClearance + kSkinSlope * to_inner) : kSocketClearance;
}

// The eye's surface without its edge at the limbus, over which a lid slides without showing it.
double padded_radius(const Eye& eye, const Double3& way) {
    constexpr double kTurn = radians(9.0);
    const Double3 aside = glm::normalize(eye.axis - glm::dot(eye.axis, way) * way + Double3(1e-12));
    double sum = eye_surface_radius(eye, way);
    for (const double turn : {-2.0 * kTurn, -kTurn, kTurn, 2.0 * kTurn}) {
        sum += eye_surface_radius(eye, std::cos(turn) * way + std::sin(turn) * aside);
    }
    return sum / 5.0;
}

// Lid skin that has come down before the eye lies on it, whatever fold it came from.
double flattened(double height, double to_inner, double share) {
    constexpr double kThick = 0.0014;  // of a lid, skin to eye, near its edge
    constexpr double kThicker = 0.12;  // and more for each millimetre away from it
    const double most = kThick + kThicker * to_inner;
    return height > most ? glm::mix(height, most, share) : height;
}

// Both lids drawn from their natural places to an opening; the skin slides round the eye with them.
void draw_lids(const LidRegion& region, const Eye& eye, double opening, std::vector<Double3>& positions) {
    const LidMargins laid{pick(positions, region.inner), pick(positions, region.outer), {}};
    const LidMargins drawn = drawn_to(eye, laid, opening);
    const auto way_to = [&](const Double3& p) { return glm::normalize(p - eye.centre); };
    std::vector<Pull> pulls;
    for (std::size_t i = 0; i < laid.inner.size(); ++i) {
        pulls.push_back({laid.inner[i], way_to(drawn.inner[i]) - way_to(laid.inner[i]), true});
        pulls.push_back({laid.outer[i], way_to(drawn.outer[i]) - way_to(laid.outer[i]), false});
        positions[region.inner[i]] = drawn.inner[i];
        positions[region.outer[i]] = drawn.outer[i];
    }
    const double closed = std::max(0.0, 1.0 - opening);
    for (std::size_t i = 0; i < region.near.size(); ++i) {
        Double3& p = positions[region.near[i]];
        const Follow followed = follow(pulls, kWhenDrawn, p);
        if (!(followed.share > 0.0)) continue;
        const double distance = glm::distance(p, eye.centre);
        const Double3 before = way_to(p);
        const Double3 way = glm::normalize(before + followed.by);
        double height = distance - padded_radius(eye, before);
        if (region.on_skin_side[i]) height = flattened(height, followed.to_inner, closed * followed.share);
        p = eye.centre + (padded_radius(eye, way) + height) * way;
        const double least = least_height(region.on_skin_side[i], followed.to_inner);
        if (height_above_eye(eye, p) < least) p = at_height(eye, p, least);
    }
}

Falloff when_laid(const Eye& eye) {
    const double raised = std::max(0.0, kApexAhead * eye.axis.y);
    return {kWhenLaid.from, std::min(kFarthestFold, kWhenLaid.to + kFoldFollows * raised)};
}

// The skin behind the lids raised until its flat faces, too, clear the round eye: a face whose quad has sides up to `a`
// lies at most a² / 4r under its corners.
void clear_the_eye(const LidRegion& region, const Eye& eye, std::vector<Double3>& positions) {
    for (std::size_t i = 0; i < region.near.size(); ++i) {
        Double3& p = positions[region.near[i]];
        double side = 0.0;
        for (const auto n : region.behind[i]) side = std::max(side, glm::distance(p, positions[n]));
        if (!(side > 0.0)) continue;
        const double least = kSocketClearance + side * side / (4.0 * kCorneaRadius);
        if (height_above_eye(eye, p) < least) p = at_height(eye, p, least);
    }
}

}  // namespace

LidRegion lid_region(const std::vector<Double3>& positions, const std::vector<Quad>& quads,
                     const RefinedEyeMargins& margins, const Double3& eye_centre) {
    LidRegion region{eye_centre.x < 0.0 ? 1.0 : -1.0, margins.inner, margins.outer, {}, {}, {}, {}};
    const auto neighbours = neighbours_of(positions.size(), quads);
    enum class Mark : std::uint8_t { kNone, kMargin, kSkin };
    std::vector<Mark> marks(positions.size(), Mark::kNone);
    for (const auto v : margins.inner) marks[v] = Mark::kMargin;
    // Skin is what can be walked to from the outer margin without crossing the inner one, near the eye.
    std::vector<std::uint32_t> open = margins.outer;
    for (const auto v : open) marks[v] = Mark::kSkin;
    while (!open.empty()) {
        const auto at = open.back();
        open.pop_back();
        for (const auto next : neighbours[at]) {
            if (marks[next] != Mark::kNone || glm::distance(positions[next], eye_centre) > 2.0 * kReach) continue;
            marks[next] = Mark::kSkin;
            open.push_back(next);
        }
    }
    std::vector<bool> is_margin(positions.size(), false);
    for (const auto* list : {&margins.inner, &margins.outer}) {
        for (const auto v : *list) is_margin[v] = true;
    }
    for (std::uint32_t v = 0; v < positions.size(); ++v) {
        if (is_margin[v] || glm::distance(positions[v], eye_centre) > kReach) continue;
        const bool is_skin = marks[v] == Mark::kSkin;
        region.near.push_back(v);
        region.on_skin_side.push_back(is_skin);
        region.behind.push_back(is_skin ? std::vector<std::uint32_t>{} : neighbours[v]);
    }
    std::vector<bool> is_skin(positions.size());
    for (std::size_t v = 0; v < positions.size(); ++v) is_skin[v] = marks[v] == Mark::kSkin;
    region.corners = corner_vertices(positions, margins, is_skin, neighbours);
    return region;
}

void lay_lids(const LidRegion& region, const Eye& eye, double opening, std::vector<Double3>& positions) {
    const auto inner_before = pick(positions, region.inner);
    const auto outer_before = pick(positions, region.outer);
    const LidMargins laid = open_naturally(eye, region.inward, {inner_before, outer_before, {}});
    const auto& inner = laid.inner;
    const auto& outer = laid.outer;
    std::vector<Pull> pulls;
    for (std::size_t i = 0; i < inner.size(); ++i) pulls.push_back({inner_before[i], inner[i] - inner_before[i], true});
    for (std::size_t i = 0; i < outer.size(); ++i)
        pulls.push_back({outer_before[i], outer[i] - outer_before[i], false});
    const Falloff falloff = when_laid(eye);
    for (std::size_t i = 0; i < inner.size(); ++i) positions[region.inner[i]] = inner[i];
    for (std::size_t i = 0; i < outer.size(); ++i) positions[region.outer[i]] = outer[i];
    for (std::size_t i = 0; i < region.near.size(); ++i) {
        Double3& p = positions[region.near[i]];
        const Follow followed = follow(pulls, falloff, p);
        p += followed.by;
        const double least = least_height(region.on_skin_side[i], followed.to_inner);
        if (height_above_eye(eye, p) < least) p = at_height(eye, p, least);
    }
    if (opening != 1.0) draw_lids(region, eye, opening, positions);
    even_out_corners(region, eye, positions);
    clear_the_eye(region, eye, positions);
}

}  // namespace understudy
