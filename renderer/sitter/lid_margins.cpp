#include "sitter/lid_margins.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "sitter/caruncle.h"
#include "sitter/eye_surface.h"

namespace understudy {
namespace {

constexpr double kThinnestLid = 0.0009;
constexpr double kThickestLid = 0.0017;
// Lids go up and down with the eye, the upper one nearly as far: Becker and Fuchs, "Lid-eye coordination during
// vertical gaze changes in man and monkey", J. Neurophysiol. 60 (1988) 1227. The lower one's share is common
// observation.
constexpr double kUpperLidFollows = 0.9;
constexpr double kLowerLidFollows = 0.35;
// From which share of half the opening's length on the lids draw together, and what is left of their height over the
// line at the corner itself. The outer corner is a point; the inner one a round bay where the caruncle lies.
constexpr double kOuterCornerFrom = 0.55;
constexpr double kOuterCornerHeight = 0.15;
constexpr double kInnerCornerFrom = 0.80;
constexpr double kInnerCornerHeight = 0.60;
constexpr double kOuterDrawnIn = 0.6;  // of the way from the outer edge to the inner one: lids end square, not slanting
constexpr double kOuterInward = 0.3;   // of kCornerInward
constexpr double kOuterWedge = 0.70;   // the lids' outer edges draw together less
constexpr double kCornerInward = 0.0022;
constexpr double kMostStandOff = 0.0020;
constexpr double kCornerForward = 0.0014;  // the package sets the inner corner deep, where its own nose would shade it

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
    // How much of the height over the line is left where lids meet.
    double wedge(const Double3& p, double inward) const {
        const double t = std::clamp(2.0 * along(p) - 1.0, -1.0, 1.0);
        const bool inner = t * inward > 0.0;
        const double from = inner ? kInnerCornerFrom : kOuterCornerFrom;
        const double left = inner ? kInnerCornerHeight : kOuterCornerHeight;
        return 1.0 - (1.0 - left) * smooth_step((std::abs(t) - from) / (1.0 - from));
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
void shape_corners(const Eye& eye, double inward, LidMargins& margins) {
    const Corners corners = corners_of(margins.inner);
    const Double3 corner = inward > 0.0 ? corners.high : corners.low;
    for (Double3& p : margins.inner) {
        const double near = 1.0 - smooth_step(std::abs(p.x - corner.x) / kCaruncleLength);
        margins.stand_off.push_back(near * (std::clamp(height_above_eye(eye, p), 0.0, kMostStandOff) + kCornerForward));
    }
    for (auto* margin : {&margins.inner, &margins.outer}) {
        const double strength = margin == &margins.inner ? 1.0 : kOuterWedge;
        for (Double3& p : *margin) {
            const double near = 1.0 - smooth_step(std::abs(p.x - corner.x) / (1.5 * kCaruncleLength));
            const double off = p.y - corners.line(p);
            p.y -= strength * off * (1.0 - corners.wedge(p, inward));
            p.x += inward * near * kCornerInward * (margin == &margins.inner ? 1.0 : kOuterInward);
        }
        even_out(*margin);
    }
    // The two edges run side by side, vertex by vertex.
    for (std::size_t i = 0; i < margins.outer.size(); ++i) {
        margins.outer[i] = glm::mix(margins.outer[i], margins.inner[i], kOuterDrawnIn);
    }
}

// The lower lid's outer edge taken off what it stands toward the opening: its rim is square to the eye, and from the
// front one sees it and the tears behind it.
Double3 squared(const Eye& eye, const Double3& inner, const Double3& outer, double share) {
    const Double3 way = glm::normalize(inner - eye.centre);
    const Double3 up = glm::normalize(Double3(0.0, 1.0, 0.0) - way.y * way);
    const Double3 off = glm::normalize(outer - eye.centre) - way;
    return eye.centre +
           glm::length(outer - eye.centre) * glm::normalize(way + off - share * std::max(0.0, glm::dot(off, up)) * up);
}

// The inner edge on the eye, the outer one a lid's thickness above it.
void lay(const Eye& eye, LidMargins& margins) {
    const Corners corners = corners_of(margins.inner);
    for (std::size_t i = 0; i < margins.inner.size(); ++i) {
        margins.inner[i] = at_height(eye, margins.inner[i], kLidClearance + margins.stand_off[i]);
    }
    for (std::size_t i = 0; i < margins.outer.size(); ++i) {
        Double3& p = margins.outer[i];
        const Double3& inner = margins.inner[i];
        if (!corners.above(inner)) p = squared(eye, inner, p, smooth_step(2.0 * corners.share(inner)));
        const double thickness = std::clamp(height_above_eye(eye, p), kThinnestLid, kThickestLid);
        p = at_height(eye, p, thickness + margins.stand_off[i]);
    }
}

}  // namespace

LidMargins open_naturally(const Eye& eye, double inward, LidMargins margins) {
    shape_corners(eye, inward, margins);
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
    return margins;
}

}  // namespace understudy
