#include "meter/eye_sight.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "kit/square_maps.h"
#include "sitter/eye.h"
#include "transport/light_sample.h"

namespace understudy {

namespace {

constexpr float kOff = 1e-5F;
// Of the cornea's part before the iris: its normals' projection, half the sphere's radius and a little more.
constexpr double kCap = kIrisRadius / kCorneaRadius;

// The golden ratio's powers in two dimensions: places that are spread as evenly as any lattice's (M. Roberts, "The
// Unreasonable Effectiveness of Quasirandom Sequences", 2018).
Vec2 spread(int i) {
    constexpr double kFirst = 0.7548776662466927;
    constexpr double kSecond = 0.5698402909980532;
    const double n = static_cast<double>(i) + 0.5;
    return {static_cast<float>(std::fmod(n * kFirst, 1.0)), static_cast<float>(std::fmod(n * kSecond, 1.0))};
}

struct CorneaPlace {
    Vec3 position;
    Vec3 normal;
};

CorneaPlace cornea_place(const Eye& eye, const Vec2& square) {
    const Frame across = Frame::around(Vec3(eye.axis));
    const DiscVector<float> disc = square_to_disc_vector(square.x, square.y);
    const Vec2 aside = static_cast<float>(kCap) * disc.radius * Vec2(disc.x, disc.y);
    const Vec3 normal = across.to_world({aside.x, aside.y, std::sqrt(1.0F - glm::dot(aside, aside))});
    return {Vec3(cornea_centre(eye)) + (static_cast<float>(kCorneaRadius) + kOff) * normal, normal};
}

// The light from there to here over what an even front sends square to itself; 0 from behind either.
double carried(const Emitter& emitter, const EmitterPoint& from, const CorneaPlace& to) {
    const Vec3 away = to.position - from.position;
    const float distance = glm::length(away);
    const Vec3 toward = away / distance;
    const float leaving = glm::dot(from.normal, toward);
    const float arriving = -glm::dot(to.normal, toward);
    if (leaving <= 0.0F || arriving <= 0.0F) return 0.0;
    return static_cast<double>(emitter.radiance(from.position, toward) * from.area * leaving * arriving /
                               (distance * distance));
}

}  // namespace

std::vector<Taken> by_size(const std::vector<Taken>& shares) {
    std::vector<Taken> sorted = shares;
    std::stable_sort(sorted.begin(), sorted.end(), [](const Taken& a, const Taken& b) { return a.share > b.share; });
    return sorted;
}

EyeSight sight_of(const Stage& stage, const Eye& eye, const Emitter& emitter, int places) {
    const int across = static_cast<int>(std::lround(std::sqrt(places)));
    std::map<std::string, double> taken;
    double all = 0.0;
    double seen = 0.0;
    for (int i = 0; i < across * across; ++i) {
        const CorneaPlace here = cornea_place(eye, spread(i));
        const int row = i / across;
        const Vec2 square((static_cast<float>(i % across) + 0.5F) / static_cast<float>(across),
                          (static_cast<float>(row) + 0.5F) / static_cast<float>(across));
        const EmitterPoint there = emitter.point_at(square, here.position);
        const double light = carried(emitter, there, here);
        if (light <= 0.0) continue;
        all += light;
        const Ray way = shadow_ray(here.position, there.position);
        const auto passes = static_cast<double>(stage.passes(way));
        seen += passes * light;
        if (passes < 1.0) taken[stage.blocker(way).value_or("cloth")] += (1.0 - passes) * light;
    }
    EyeSight sight;
    if (all <= 0.0) {
        sight.taken = {{"its own back", 1.0}};
        return sight;
    }
    sight.share = seen / all;
    for (const auto& [name, share] : taken) sight.taken.push_back({name, share / all});
    sight.taken = by_size(sight.taken);
    return sight;
}

}  // namespace understudy
