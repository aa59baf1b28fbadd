#include "sitter/lids.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "sitter/caruncle.h"
#include "sitter/eye_surface.h"

namespace understudy {
namespace {

constexpr double kReach = 0.024;        // round the eye's centre, of what may move
constexpr double kFalloffFrom = 0.001;  // from the margins: skin nearer than this follows wholly …
constexpr double kFalloffTo = 0.009;    // … farther than this stays
constexpr double kThinnestLid = 0.0009;
constexpr double kThickestLid = 0.0017;
// Lids go up and down with the eye, the upper one nearly as far: Becker and Fuchs, "Lid-eye coordination during
// vertical gaze changes in man and monkey", J. Neurophysiol. 60 (1988) 1227. The lower one's share is common
// observation.
constexpr double kUpperLidFollows = 0.9;
constexpr double kLowerLidFollows = 0.35;
constexpr double kSkinSlope = 0.6;  // how fast the least height of skin above the eye grows from the margin
constexpr double kSocketClearance = 0.00002;
constexpr double kLeastSkin = 0.0010;

constexpr double kCornerFrom = 0.55;    // of half the opening's length: from here on the lids draw together
constexpr double kCornerHeight = 0.15;  // what is left at the corner itself
constexpr double kOuterDrawnIn = 0.6;  // of the way from the outer edge to the inner one: lids end square, not slanting
constexpr double kOuterInward = 0.3;   // of kCornerInward
constexpr double kOuterWedge = 0.70;   // the lids' outer edges draw together less
constexpr double kCornerInward = 0.0022;
constexpr double kMostStandOff = 0.0020;

double smooth(double t) {
    t = std::clamp(t, 0.0, 1.0);
    return t * t * (3.0 - 2.0 * t);
}

Double3 at_height(const Eye& eye, const Double3& point, double height) {
    const Double3 way = glm::normalize(point - eye.centre);
    return eye.centre + (eye_surface_radius(eye, way) + height) * way;
}

std::vector<Double3> pick(const std::vector<Double3>& positions, const std::vector<std::uint32_t>& which) {
    std::vector<Double3> picked;
    for (const auto v : which) picked.push_back(positions[v]);
    return picked;
}

// ---- the opening ----------------------------------------------------------------------------------------------------

// The line between the corners of the opening.
struct Corners {
    Double3 low, high;  // by x
    double along(const Double3& p) const { return (p.x - low.x) / (high.x - low.x); }
    double line(const Double3& p) const { return glm::mix(low.y, high.y, std::clamp(along(p), 0.0, 1.0)); }
    bool above(const Double3& p) const { return p.y > line(p); }
    // 1 in the middle, 0 at the corners.
    double share(const Double3& p) const {
        const double t = std::clamp(2.0 * along(p) - 1.0, -1.0, 1.0);
        return 1.0 - t * t;
    }
    // How much of the height over the line is left where lids meet in a point.
    double wedge(const Double3& p) const {
        const double t = std::min(1.0, std::abs(2.0 * along(p) - 1.0));
        return 1.0 - (1.0 - kCornerHeight) * smooth((t - kCornerFrom) / (1.0 - kCornerFrom));
    }
};

Corners corners_of(const std::vector<Double3>& margin) {
    const auto [low, high] =
        std::minmax_element(margin.begin(), margin.end(), [](const Double3& a, const Double3& b) { return a.x < b.x; });
    return {*low, *high};
}

// Height of the upper (or lower) margin over the pupil's centre.
double height_at_pupil(const std::vector<Double3>& margin, const Corners& corners, const Eye& eye, bool upper) {
    double height = 0.0;
    double nearest = std::numeric_limits<double>::max();
    for (const Double3& p : margin) {
        const double off = std::abs(p.x - eye.centre.x);
        if (corners.above(p) != upper || off >= nearest) continue;
        nearest = off;
        height = p.y - eye.centre.y;
    }
    return height;
}

struct Margins {
    std::vector<Double3> inner, outer;
    std::vector<double> stand_off;  // of the inner edge where the caruncle holds it off the eye
};

// A closed line without its small waves; its corners, where it turns back, keep their places.
void even_out(std::vector<Double3>& line) {
    constexpr int kRounds = 6;
    const auto [low, high] =
        std::minmax_element(line.begin(), line.end(), [](const Double3& a, const Double3& b) { return a.x < b.x; });
    const auto first = static_cast<std::size_t>(low - line.begin());
    const auto second = static_cast<std::size_t>(high - line.begin());
    for (int round = 0; round < kRounds; ++round) {
        const auto before = line;
        const std::size_t count = line.size();
        for (std::size_t i = 0; i < count; ++i) {
            if (i == first || i == second) continue;
            line[i] = 0.5 * before[i] + 0.25 * (before[(i + 1) % count] + before[(i + count - 1) % count]);
        }
    }
}

// Draws both corners to a point and the inner one toward the nose, where the caruncle keeps it in front.
void shape_corners(const Eye& eye, double inward, Margins& margins) {
    const Corners corners = corners_of(margins.inner);
    const Double3 corner = inward > 0.0 ? corners.high : corners.low;
    for (Double3& p : margins.inner) {
        const double near = 1.0 - smooth(std::abs(p.x - corner.x) / kCaruncleLength);
        margins.stand_off.push_back(near * std::clamp(height_above_eye(eye, p), 0.0, kMostStandOff));
    }
    for (auto* margin : {&margins.inner, &margins.outer}) {
        const double strength = margin == &margins.inner ? 1.0 : kOuterWedge;
        for (Double3& p : *margin) {
            const double near = 1.0 - smooth(std::abs(p.x - corner.x) / (1.5 * kCaruncleLength));
            const double off = p.y - corners.line(p);
            p.y -= strength * off * (1.0 - corners.wedge(p));
            p.x += inward * near * kCornerInward * (margin == &margins.inner ? 1.0 : kOuterInward);
        }
        even_out(*margin);
    }
    // The two edges run side by side, vertex by vertex.
    for (std::size_t i = 0; i < margins.outer.size(); ++i) {
        margins.outer[i] = glm::mix(margins.outer[i], margins.inner[i], kOuterDrawnIn);
    }
}

// The inner edge on the eye, the outer one a lid's thickness above it.
void lay(const Eye& eye, Margins& margins) {
    for (std::size_t i = 0; i < margins.inner.size(); ++i) {
        margins.inner[i] = at_height(eye, margins.inner[i], kLidClearance + margins.stand_off[i]);
    }
    for (std::size_t i = 0; i < margins.outer.size(); ++i) {
        Double3& p = margins.outer[i];
        const double thickness = std::clamp(height_above_eye(eye, p), kThinnestLid, kThickestLid);
        p = at_height(eye, p, thickness + margins.stand_off[i]);
    }
}

// Raises or lowers both margins so that the inner one comes into the natural range.
void open_naturally(const Eye& eye, Margins& margins) {
    const double pupil_raised = kApexAhead * eye.axis.y;
    const double upper_follows = kUpperLidFollows * pupil_raised;
    const double lower_follows = kLowerLidFollows * pupil_raised;
    for (int round = 0; round < 6; ++round) {
        lay(eye, margins);
        const Corners corners = corners_of(margins.inner);
        // A thick lid's outer edge may hang before the inner one.
        const double upper = std::min(height_at_pupil(margins.inner, corners, eye, true),
                                      height_at_pupil(margins.outer, corners, eye, true));
        const double lower = std::max(height_at_pupil(margins.inner, corners, eye, false),
                                      height_at_pupil(margins.outer, corners, eye, false));
        const double raise_upper =
            std::clamp(upper - upper_follows, kUpperLidLow, kUpperLidHigh) + upper_follows - upper;
        const double raise_lower =
            std::clamp(lower - lower_follows, -kLowerLidLow, -kLowerLidHigh) + lower_follows - lower;
        for (auto* margin : {&margins.inner, &margins.outer}) {
            for (Double3& p : *margin) p.y += corners.share(p) * (corners.above(p) ? raise_upper : raise_lower);
        }
    }
    lay(eye, margins);
}

// ---- what follows ---------------------------------------------------------------------------------------------------

struct Pull {
    Double3 at;
    Double3 by;
    bool inner;
};

struct Follow {
    Double3 by;
    double to_inner;  // distance to the inner margin
};

// Shepard's inverse-distance weights (1968) within a smooth falloff.
Follow follow(const std::vector<Pull>& pulls, const Double3& point) {
    constexpr double kSoft = 1e-8;
    Double3 sum(0.0);
    double total = 0.0;
    double nearest = std::numeric_limits<double>::max();
    double nearest_inner = nearest;
    for (const Pull& pull : pulls) {
        const Double3 gap = pull.at - point;
        const double squared = glm::dot(gap, gap);
        const double weight = 1.0 / ((squared + kSoft) * (squared + kSoft));
        sum += weight * pull.by;
        total += weight;
        nearest = std::min(nearest, squared);
        if (pull.inner) nearest_inner = std::min(nearest_inner, squared);
    }
    const double t = (std::sqrt(nearest) - kFalloffFrom) / (kFalloffTo - kFalloffFrom);
    return {(1.0 - smooth(t)) / total * sum, std::sqrt(nearest_inner)};
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
        if (near < kCornerReach) corners.push_back({v, neighbours[v], 1.0 - smooth(near / kCornerReach)});
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

}  // namespace

LidRegion lid_region(const std::vector<Double3>& positions, const std::vector<Quad>& quads,
                     const RefinedEyeMargins& margins, const Double3& eye_centre) {
    LidRegion region{eye_centre.x < 0.0 ? 1.0 : -1.0, margins.inner, margins.outer, {}, {}, {}};
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
        region.near.push_back(v);
        region.on_skin_side.push_back(marks[v] == Mark::kSkin);
    }
    std::vector<bool> is_skin(positions.size());
    for (std::size_t v = 0; v < positions.size(); ++v) is_skin[v] = marks[v] == Mark::kSkin;
    region.corners = corner_vertices(positions, margins, is_skin, neighbours);
    return region;
}

void lay_lids(const LidRegion& region, const Eye& eye, std::vector<Double3>& positions) {
    const auto inner_before = pick(positions, region.inner);
    const auto outer_before = pick(positions, region.outer);
    Margins laid{inner_before, outer_before, {}};
    shape_corners(eye, region.inward, laid);
    open_naturally(eye, laid);
    const auto& inner = laid.inner;
    const auto& outer = laid.outer;
    std::vector<Pull> pulls;
    for (std::size_t i = 0; i < inner.size(); ++i) pulls.push_back({inner_before[i], inner[i] - inner_before[i], true});
    for (std::size_t i = 0; i < outer.size(); ++i)
        pulls.push_back({outer_before[i], outer[i] - outer_before[i], false});
    for (std::size_t i = 0; i < inner.size(); ++i) positions[region.inner[i]] = inner[i];
    for (std::size_t i = 0; i < outer.size(); ++i) positions[region.outer[i]] = outer[i];
    for (std::size_t i = 0; i < region.near.size(); ++i) {
        Double3& p = positions[region.near[i]];
        const Follow followed = follow(pulls, p);
        p += followed.by;
        const double least = region.on_skin_side[i]
                                 ? std::min(kLeastSkin, kLidClearance + kSkinSlope * followed.to_inner)
                                 : kSocketClearance;
        if (height_above_eye(eye, p) < least) p = at_height(eye, p, least);
    }
    even_out_corners(region, eye, positions);
}

}  // namespace understudy
