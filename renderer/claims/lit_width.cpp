#include "claims/lit_width.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace understudy {

namespace {

constexpr int kAcross = 96;  // places of the front, squared
constexpr int kOutline = 96;

struct Lit {
    double across = 0.0;  // over the distance
    double light = 0.0;
};

// How far across a share of the light lies. Each place's light is spread about itself, so that places in rows do not
// make steps.
double across_at(const std::vector<Lit>& places, double share) {
    double all = 0.0;
    for (const Lit& place : places) all += place.light;
    double before = 0.0;
    for (std::size_t i = 0; i < places.size(); ++i) {
        const double next = before + places[i].light;
        if (next >= share * all) {
            const std::size_t neighbour = std::min(i + 1, places.size() - 1);
            const double part = places[i].light > 0.0 ? (share * all - before) / places[i].light : 0.0;
            return places[i].across + part * (places[neighbour].across - places[i].across);
        }
        before = next;
    }
    return places.back().across;
}

}  // namespace

LitWidth lit_width(const Emitter& light, const Vec3& place) {
    const Double3 way = glm::normalize(Double3(light.centre()) - Double3(place));
    const Double3 level = glm::cross(Double3(0.0, 1.0, 0.0), way);
    if (glm::length(level) < 1e-6) return {};  // straight overhead
    const Double3 across = (level.z < 0.0 ? -1.0 : 1.0) * glm::normalize(level);
    const auto across_of = [&](const Vec3& point) {
        const Double3 off = Double3(point) - Double3(place);
        return glm::dot(off, across) / glm::dot(off, way);
    };
    LitWidth width;
    double least = HUGE_VAL, most = -HUGE_VAL;
    for (const Vec3& point : light.outline(place, kOutline)) {
        least = std::min(least, across_of(point));
        most = std::max(most, across_of(point));
    }
    width.whole = std::max(0.0, most - least);
    std::vector<Lit> places;
    double seen = 0.0;  // solid angle
    double lit = 0.0;
    for (int i = 0; i < kAcross * kAcross; ++i) {
        const int row = i / kAcross;
        const Vec2 square((static_cast<float>(i % kAcross) + 0.5F) / kAcross,
                          (static_cast<float>(row) + 0.5F) / kAcross);
        const EmitterPoint point = light.point_at(square, place);
        const Vec3 out = glm::normalize(place - point.position);
        const float leaving = glm::dot(point.normal, out);
        if (leaving <= 0.0F) continue;
        const float away = glm::distance(point.position, place);
        const auto angle = static_cast<double>(point.area * leaving / (away * away));
        const double light_here = angle * static_cast<double>(light.radiance(point.position, out));
        places.push_back({across_of(point.position), light_here});
        seen += angle;
        lit += light_here;
    }
    if (!(lit > 0.0)) return width;
    width.radiance = lit / seen;
    std::sort(places.begin(), places.end(), [](const Lit& a, const Lit& b) { return a.across < b.across; });
    width.four_fifths = across_at(places, 0.9) - across_at(places, 0.1);
    width.middle = across_at(places, 0.5);
    return width;
}

}  // namespace understudy
