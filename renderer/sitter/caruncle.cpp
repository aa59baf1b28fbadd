#include "sitter/caruncle.h"

#include <algorithm>
#include <cmath>

#include "sitter/eye_surface.h"

namespace understudy {
namespace {

constexpr double kBulge = 0.0007;
constexpr double kFullBulgeGap = 0.0015;  // between the lids; with less it has less room
constexpr double kAboveSocket = 0.0003;   // it lies before the socket's own skin
constexpr double kHollow = 0.0009;        // how far its edge on the eye curves back toward the nose
constexpr double kSunk = 0.0001;          // of that edge, so that no light slips under it

// The body itself lies in the corner's half, a fold of the white's skin before it.
double bulge_at(double along) {
    const double body = std::sin(kPiDouble * std::min(1.0, along / 0.75));
    const double fold = along > 0.75 ? std::sin(kPiDouble * (along - 0.75) / 0.25) : 0.0;
    return body + 0.25 * fold;
}

void add_face(RefinedHead& head, Quad quad, bool turn_over) {
    if (turn_over) std::swap(quad[1], quad[3]);
    head.quads.push_back(quad);
    head.zones.push_back(Zone::kCaruncle);
}

Caruncle::Row add_row(RefinedHead& head, std::uint32_t upper, std::uint32_t lower) {
    Caruncle::Row row{upper, lower, {}};
    for (auto& vertex : row.across) {
        vertex = static_cast<std::uint32_t>(head.positions.size());
        head.positions.push_back(0.5 * (head.positions[upper] + head.positions[lower]));
        head.weights.push_back(head.weights[upper]);
    }
    return row;
}

}  // namespace

Caruncle add_caruncle(RefinedHead& head, const std::vector<std::uint32_t>& inner, bool of_the_right_eye) {
    // The right eye's inner corner is where its margin reaches farthest to the sitter's left, +x.
    const double inward = of_the_right_eye ? 1.0 : -1.0;
    const auto count = inner.size();
    std::size_t corner = 0;
    for (std::size_t i = 0; i < count; ++i) {
        if (inward * head.positions[inner[i]].x > inward * head.positions[inner[corner]].x) corner = i;
    }
    Caruncle caruncle{inward, {add_row(head, inner[corner], inner[corner])}};
    const double corner_x = head.positions[inner[corner]].x;
    for (std::size_t k = 1; 2 * k < count; ++k) {
        auto upper = inner[(corner + k) % count];
        auto lower = inner[(corner + count - k) % count];
        if (head.positions[upper].y < head.positions[lower].y) std::swap(upper, lower);
        caruncle.rows.push_back(add_row(head, upper, lower));
        const double reached = 0.5 * (head.positions[upper].x + head.positions[lower].x);
        if (std::abs(reached - corner_x) > kCaruncleLength) break;
    }
    for (std::size_t r = 1; r < caruncle.rows.size(); ++r) {
        const auto& last = caruncle.rows[r - 1].across;
        const auto& now = caruncle.rows[r].across;
        for (std::size_t k = 0; k + 1 < Caruncle::kAcross; ++k) {
            add_face(head, {last.at(k), last.at(k + 1), now.at(k + 1), now.at(k)}, of_the_right_eye);
        }
    }
    return caruncle;
}

void place_caruncle(const Caruncle& caruncle, const Eye& eye, std::vector<Double3>& positions) {
    for (std::size_t r = 0; r < caruncle.rows.size(); ++r) {
        const auto& row = caruncle.rows[r];
        const Double3& upper = positions[row.upper];
        const Double3& lower = positions[row.lower];
        const double room = std::min(1.0, glm::distance(upper, lower) / kFullBulgeGap);
        const double along = static_cast<double>(r) / static_cast<double>(caruncle.rows.size() - 1);
        positions[row.across.front()] = upper;
        positions[row.across.back()] = lower;
        for (std::size_t k = 1; k + 1 < Caruncle::kAcross; ++k) {
            const double t = static_cast<double>(k) / static_cast<double>(Caruncle::kAcross - 1);
            Double3 p = glm::mix(upper, lower, t);
            p.x += caruncle.inward * room * kHollow * 4.0 * t * (1.0 - t) * along;
            const Double3 way = glm::normalize(p - eye.centre);
            const double surface = eye_surface_radius(eye, way) + kAboveSocket;
            // Full in the middle, down on the eye at its outer edge.
            const double lifted = glm::distance(p, eye.centre) + room * kBulge * 4.0 * t * (1.0 - t) * bulge_at(along);
            const double height =
                glm::mix(std::max(lifted, surface), surface - kAboveSocket - kSunk, std::pow(along, 4.0));
            p = eye.centre + height * way;
            positions[row.across.at(k)] = p;
        }
    }
}

}  // namespace understudy
