#include "sitter/tear_line.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "sitter/caruncle.h"
#include "sitter/eye_surface.h"

namespace understudy {
namespace {

constexpr double kRunsOut = 0.0020;    // metres over which it grows from nothing beside the caruncle
constexpr double kShareOfGap = 0.35;   // its radius is at most this much of what is between the lids
constexpr double kLeastRadius = 2e-5;  // so that no face shrinks to nothing
constexpr double kSunk = 5e-6;         // its edge on the eye, under the eye's surface
constexpr double kOffLid = 1e-5;       // its edge on the lid, before the lid's skin

double away_from(const std::vector<Double3>& positions, std::uint32_t a, std::uint32_t b) {
    return std::abs(positions[a].x - positions[b].x);
}

}  // namespace

TearLine::TearLine(RefinedHead& head, const RefinedEyeMargins& margins, bool of_the_right_eye) {
    const auto& inner = margins.inner;
    const double inward = of_the_right_eye ? 1.0 : -1.0;
    const auto toward_nose = [&](std::uint32_t a, std::uint32_t b) {
        return inward * head.positions[a].x < inward * head.positions[b].x;
    };
    const auto [outer_corner, inner_corner] = std::minmax_element(inner.begin(), inner.end(), toward_nose);
    const Double3 from = head.positions[*outer_corner];
    const Double3 to = head.positions[*inner_corner];
    const std::size_t count = inner.size();
    const auto start = static_cast<std::size_t>(inner_corner - inner.begin());
    for (std::size_t k = 1; k < count; ++k) {
        const std::size_t i = (start + k) % count;
        const double beyond = away_from(head.positions, inner[i], *inner_corner) - kCaruncleLength;
        if (beyond <= 0.0) continue;
        const Double3& p = head.positions[inner[i]];
        const bool upper = p.y > glm::mix(from.y, to.y, (p.x - from.x) / (to.x - from.x));
        columns_.push_back({inner[i], margins.outer[i], inner[(i + count - 1) % count], inner[(i + 1) % count],
                            static_cast<std::uint32_t>(head.positions.size()), upper, smooth_step(beyond / kRunsOut)});
        for (std::size_t row = 0; row < kAcross; ++row) {
            head.positions.push_back(p);
            head.weights.push_back(head.weights[inner[i]]);
        }
    }
    for (std::size_t c = 1; c < columns_.size(); ++c) {
        for (std::uint32_t row = 1; row < kAcross; ++row) {
            const std::uint32_t a = columns_[c - 1].first + row;
            const std::uint32_t b = columns_[c].first + row;
            Quad quad{a - 1, b - 1, b, a};
            if (!of_the_right_eye) std::swap(quad[1], quad[3]);
            head.quads.push_back(quad);
            head.zones.push_back(Zone::kTearLine);
        }
    }
}

// What is between this place and the other lid.
double TearLine::room_at(const Column& column, const std::vector<Double3>& positions) const {
    double nearest = std::numeric_limits<double>::max();
    for (const Column& other : columns_) {
        if (other.upper == column.upper) continue;
        nearest = std::min(nearest, glm::distance(positions[other.inner], positions[column.inner]));
    }
    return nearest;
}

void TearLine::place(const Eye& eye, std::vector<Double3>& positions) const {
    for (const Column& column : columns_) {
        const Double3 corner = positions[column.inner];
        const double full = column.share * (column.upper ? kUpperTearRadius : kLowerTearRadius);
        const double radius = std::max(kLeastRadius, std::min(full, kShareOfGap * room_at(column, positions)));
        const Double3 up = glm::normalize(corner - eye.centre);
        const Double3 line = glm::normalize(positions[column.after] - positions[column.before]);
        Double3 open = glm::normalize(glm::cross(line, up));
        if ((open.y < 0.0) != column.upper) open = -open;
        // Up the lid's edge, as far as it is square to the line.
        const Double3 wall = glm::normalize(positions[column.outer] - corner);
        for (std::size_t row = 0; row < kAcross; ++row) {
            const double turn = 0.5 * kPiDouble * static_cast<double>(row) / static_cast<double>(kAcross - 1);
            const Double3 on_eye = at_height(eye, corner + radius * (1.0 - std::sin(turn)) * open, -kSunk);
            positions[column.first + row] = on_eye + kOffLid * open + (kSunk + radius * (1.0 - std::cos(turn))) * wall;
        }
        positions[column.first] = at_height(eye, positions[column.first], -kSunk);
    }
}

}  // namespace understudy
