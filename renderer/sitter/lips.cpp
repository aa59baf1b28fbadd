#include "sitter/lips.h"

#include <algorithm>
#include <cmath>

namespace understudy {
namespace {

constexpr double kMostTaken = 0.0015;  // of the gap
constexpr double kGapLeft = 0.00004;   // lips that touch lie beside each other, not in each other
constexpr double kReach = 0.009;       // of the skin that follows

// One lip's part of the line, from one corner of the mouth to the other, by growing x.
using LipLine = std::vector<Double3>;

double height_at(const LipLine& line, double x) {
    const auto after = std::lower_bound(line.begin() + 1, line.end() - 1, x,
                                        [](const Double3& p, double wanted) { return p.x < wanted; });
    const Double3& a = *(after - 1);
    const Double3& b = *after;
    const double t = b.x > a.x ? std::clamp((x - a.x) / (b.x - a.x), 0.0, 1.0) : 0.0;
    return std::lerp(a.y, b.y, t);
}

struct Lips {
    LipLine upper, lower;
};

// The line goes from the mouth's right corner along the upper lip to the left one, and back.
Lips lips_of(const RefinedHead& head) {
    const auto& contact = head.lips_meet;
    const auto by_x = [&](std::uint32_t a, std::uint32_t b) { return head.positions[a].x < head.positions[b].x; };
    const auto left = std::max_element(contact.begin(), contact.end(), by_x);
    Lips lips;
    for (auto v = contact.begin(); v <= left; ++v) lips.upper.push_back(head.positions[*v]);
    lips.lower.push_back(head.positions[contact.front()]);
    for (auto v = contact.end() - 1; v >= left; --v) lips.lower.push_back(head.positions[*v]);
    return lips;
}

Double3 nearest_on(const LipLine& line, const Double3& place) {
    Double3 nearest = line.front();
    for (std::size_t i = 1; i < line.size(); ++i) {
        const Double3 side = line[i] - line[i - 1];
        const double length2 = glm::dot(side, side);
        const double t = length2 > 0.0 ? std::clamp(glm::dot(place - line[i - 1], side) / length2, 0.0, 1.0) : 0.0;
        const Double3 on = line[i - 1] + t * side;
        if (glm::distance(on, place) < glm::distance(nearest, place)) nearest = on;
    }
    return nearest;
}

double taken_at(const Lips& lips, double x) {
    const double gap = height_at(lips.upper, x) - height_at(lips.lower, x);
    return std::clamp(gap - kGapLeft, 0.0, kMostTaken);
}

// How far the skin at this place goes toward the other lip; `own` is the line of the lip that it is on.
double way_of(const Double3& place, const LipLine& own, const Lips& lips) {
    const Double3 nearest = nearest_on(own, place);
    const double away = glm::distance(nearest, place) / kReach;
    if (away >= 1.0) return 0.0;
    const double share = (1.0 - away * away) * (1.0 - away * away);
    return 0.5 * share * taken_at(lips, nearest.x);
}

}  // namespace

void close_lips(RefinedHead& head) {
    const Lips lips = lips_of(head);
    Double3 low = lips.upper.front();
    Double3 high = low;
    for (const LipLine* line : {&lips.upper, &lips.lower}) {
        for (const Double3& p : *line) {
            low = glm::min(low, p);
            high = glm::max(high, p);
        }
    }
    for (Double3& p : head.positions) {
        const Double3 inside = glm::min(p - low, high - p);
        if (std::min({inside.x, inside.y, inside.z}) < -kReach) continue;
        const double above = p.y - 0.5 * (height_at(lips.upper, p.x) + height_at(lips.lower, p.x));
        p.y += above > 0.0 ? -way_of(p, lips.upper, lips) : way_of(p, lips.lower, lips);
    }
}

}  // namespace understudy
