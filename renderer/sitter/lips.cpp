#include "sitter/lips.h"

#include <algorithm>
#include <cmath>

namespace understudy {
namespace {

constexpr double kMostTaken = 0.0015;
constexpr double kLeft = 0.00004;  // lips that touch lie beside each other, not in each other
constexpr double kReach = 0.009;   // of the skin that follows

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

Lips lips_of(const RefinedHead& head, const std::vector<std::uint32_t>& contact) {
    const auto by_x = [&](std::uint32_t a, std::uint32_t b) { return head.positions[a].x < head.positions[b].x; };
    const auto [right, left] = std::minmax_element(contact.begin(), contact.end(), by_x);
    const auto count = contact.size();
    const auto start = static_cast<std::size_t>(right - contact.begin());
    const auto end = (static_cast<std::size_t>(left - contact.begin()) + count - start) % count;
    Lips lips;
    for (std::size_t i = 0; i <= end; ++i) lips.upper.push_back(head.positions[contact[(start + i) % count]]);
    for (std::size_t i = count; i >= end; --i) lips.lower.push_back(head.positions[contact[(start + i) % count]]);
    const auto mean_height = [](const LipLine& line) {
        double sum = 0.0;
        for (const Double3& p : line) sum += p.y;
        return sum / static_cast<double>(line.size());
    };
    if (mean_height(lips.upper) < mean_height(lips.lower)) std::swap(lips.upper, lips.lower);
    return lips;
}

double taken_at(const Lips& lips, double x) {
    const double gap = height_at(lips.upper, x) - height_at(lips.lower, x);
    return std::clamp(gap - kLeft, 0.0, kMostTaken);
}

// How far the skin at this place goes toward the other lip; `own` is the line of the lip that it is on.
double way_of(const Double3& place, const LipLine& own, const Lips& lips) {
    const auto nearest = std::min_element(own.begin(), own.end(), [&](const Double3& a, const Double3& b) {
        return glm::distance(a, place) < glm::distance(b, place);
    });
    const double away = glm::distance(*nearest, place) / kReach;
    if (away >= 1.0) return 0.0;
    const double share = (1.0 - away * away) * (1.0 - away * away);
    return 0.5 * share * taken_at(lips, std::lerp(place.x, nearest->x, std::min(1.0, 2.0 * away)));
}

}  // namespace

void close_lips(RefinedHead& head) {
    const Lips lips = lips_of(head, head.lips_meet);
    const Double3& right = lips.upper.front();
    const Double3& left = lips.upper.back();
    for (Double3& p : head.positions) {
        if (p.x < right.x - kReach || p.x > left.x + kReach) continue;
        if (std::abs(p.y - right.y) > 0.05 || std::abs(p.z - right.z) > 0.05) continue;
        const double above = p.y - 0.5 * (height_at(lips.upper, p.x) + height_at(lips.lower, p.x));
        p.y += above > 0.0 ? -way_of(p, lips.upper, lips) : way_of(p, lips.lower, lips);
    }
}

}  // namespace understudy
