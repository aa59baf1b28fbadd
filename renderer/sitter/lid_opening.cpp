#include "sitter/lid_opening.h"

#include <algorithm>

#include "sitter/eye_surface.h"

namespace understudy {
namespace {

constexpr double kLowerLidRises = 0.12;  // of the opening, when the eye closes
constexpr double kOverlap = 0.00012;     // of either inner edge beyond the line where closed lids meet
constexpr double kOverlapUpTo = 0.06;    // of the opening
constexpr double kLeastGroove = 0.12;    // what is left of the outer edges' own distance from the inner ones

// One lid's inner edge as a height over x.
struct LidLine {
    std::vector<Double3> points;  // by x

    double height_at(double x) const {
        const auto after =
            std::lower_bound(points.begin(), points.end(), x, [](const Double3& p, double at) { return p.x < at; });
        if (after == points.begin()) return points.front().y;
        if (after == points.end()) return points.back().y;
        const Double3& low = *(after - 1);
        return glm::mix(low.y, after->y, (x - low.x) / (after->x - low.x));
    }
};

struct LidLines {
    LidLine upper, lower;
    std::vector<bool> is_upper;  // one a vertex of the margin

    double closed_at(double x) const { return glm::mix(lower.height_at(x), upper.height_at(x), kLowerLidRises); }
};

LidLines lines_of(const std::vector<Double3>& margin) {
    const auto by_x = [](const Double3& a, const Double3& b) { return a.x < b.x; };
    const auto [low, high] = std::minmax_element(margin.begin(), margin.end(), by_x);
    LidLines lines;
    for (const Double3& p : margin) {
        const double along = (p.x - low->x) / (high->x - low->x);
        const bool corner = &p == &*low || &p == &*high;
        const bool upper = p.y > glm::mix(low->y, high->y, along);
        lines.is_upper.push_back(upper);
        if (corner || upper) lines.upper.points.push_back(p);
        if (corner || !upper) lines.lower.points.push_back(p);
    }
    std::sort(lines.upper.points.begin(), lines.upper.points.end(), by_x);
    std::sort(lines.lower.points.begin(), lines.lower.points.end(), by_x);
    return lines;
}

// The point over the eye as near as may be to a height, at the point's own x: laying it moves it a little toward or
// away from the eye's middle.
Double3 laid_at(const Eye& eye, const Double3& point, double y, double above_eye) {
    Double3 p = point;
    for (int round = 0; round < 5; ++round) p = at_height(eye, {point.x, y, p.z}, above_eye);
    return p;
}

}  // namespace

LidMargins drawn_to(const Eye& eye, const LidMargins& laid, double opening) {
    const LidLines lines = lines_of(laid.inner);
    const double overlap = kOverlap * (1.0 - smooth_step(opening / kOverlapUpTo));
    const double groove = std::max(kLeastGroove, std::min(1.0, opening));
    LidMargins drawn = laid;
    for (std::size_t i = 0; i < laid.inner.size(); ++i) {
        const Double3& inner = laid.inner[i];
        const Double3& outer = laid.outer[i];
        const double closed = lines.closed_at(inner.x);
        const double y = closed + opening * (inner.y - closed);
        const double past = lines.is_upper[i] ? -overlap : overlap;
        drawn.inner[i] = laid_at(eye, inner, y + past, height_above_eye(eye, inner));
        drawn.outer[i] = laid_at(eye, outer, y + groove * (outer.y - inner.y), height_above_eye(eye, outer));
    }
    return drawn;
}

}  // namespace understudy
