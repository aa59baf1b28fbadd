#include "sitter/hair/scalp.h"

#include <algorithm>
#include <array>

#include "sitter/hair/chance.h"

namespace understudy {

namespace {

struct Knot {
    float turn;    // degrees round the skull's middle, 0 over the nose, 180 over the nape
    float height;  // metres over the eyes
};

// In front the hairline lies where the face's upper third ends, drawn back over the temples; it comes down before the
// ear, runs round it and down to the nape. By eye on the library's heads.
constexpr std::array<Knot, 17> kHairline{{{0.0F, 0.0690F},
                                          {18.0F, 0.0700F},
                                          {32.0F, 0.0690F},
                                          {44.0F, 0.0620F},
                                          {54.0F, 0.0440F},
                                          {62.0F, 0.0200F},
                                          {68.0F, -0.0020F},
                                          {74.0F, -0.0180F},
                                          {80.0F, -0.0150F},
                                          {86.0F, 0.0080F},
                                          {94.0F, 0.0180F},
                                          {104.0F, 0.0150F},
                                          {112.0F, -0.0080F},
                                          {121.0F, -0.0380F},
                                          {134.0F, -0.0620F},
                                          {155.0F, -0.0740F},
                                          {180.0F, -0.0700F}}};
// From the sideburn down over the cheek, up again over the lip.
constexpr std::array<Knot, 8> kBeardTop{{{0.0F, -0.0490F},
                                         {9.0F, -0.0500F},
                                         {18.0F, -0.0580F},
                                         {27.0F, -0.0640F},
                                         {38.0F, -0.0560F},
                                         {50.0F, -0.0430F},
                                         {62.0F, -0.0160F},
                                         {72.0F, 0.0140F}}};
constexpr std::array<Knot, 5> kBeardFoot{
    {{0.0F, -0.1300F}, {25.0F, -0.1270F}, {45.0F, -0.1150F}, {62.0F, -0.0950F}, {80.0F, -0.0600F}}};

// Smooth through the knots: Catmull and Rom's cubic.
template <std::size_t N>
float height_of(const std::array<Knot, N>& knots, float turn) {
    if (turn <= knots.front().turn) return knots.front().height;
    if (turn >= knots.back().turn) return knots.back().height;
    std::size_t i = 0;
    while (turn > knots.at(i + 1).turn) ++i;
    const Knot& a = knots.at(i);
    const Knot& b = knots.at(i + 1);
    const Knot& before = i > 0 ? knots.at(i - 1) : a;
    const Knot& after = i + 2 < N ? knots.at(i + 2) : b;
    const float span = b.turn - a.turn;
    const float t = (turn - a.turn) / span;
    const float slope_a = span * (b.height - before.height) / (b.turn - before.turn);
    const float slope_b = span * (after.height - a.height) / (after.turn - a.turn);
    const float t2 = t * t;
    const float t3 = t2 * t;
    return (2.0F * t3 - 3.0F * t2 + 1.0F) * a.height + (t3 - 2.0F * t2 + t) * slope_a +
           (3.0F * t2 - 2.0F * t3) * b.height + (t3 - t2) * slope_b;
}

// Square to the line, which is steep before and behind the ear.
template <std::size_t N>
float above(const std::array<Knot, N>& knots, const Vec3& place) {
    constexpr float kAside = 1.0F;  // degree
    const float turn = turn_of(place);
    const float out = std::hypot(place.x, place.z - kSkullMiddle.z);
    const float way = static_cast<float>(radians(2.0 * static_cast<double>(kAside))) * std::max(out, 0.03F);
    const float slope = (height_of(knots, turn + kAside) - height_of(knots, turn - kAside)) / way;
    return (place.y - height_of(knots, turn)) / std::sqrt(1.0F + slope * slope);
}

struct Ground {
    std::uint32_t triangle;
    double until;  // area up to its end
};

}  // namespace

float turn_of(const Vec3& place) {
    return static_cast<float>(
        degrees(std::atan2(std::abs(static_cast<double>(place.x)), static_cast<double>(place.z - kSkullMiddle.z))));
}

float above_hairline(const Vec3& place) { return above(kHairline, place); }

float inside_beard(const Vec3& place) {
    const float turn = turn_of(place);
    const float behind = 0.001F * (80.0F - turn);  // ends before the ear
    return std::min({-above(kBeardTop, place), above(kBeardFoot, place), behind});
}

std::vector<Root> spread_roots(const GrowingHead& head, double a_square_metre, float soft, std::uint32_t seed,
                               const std::function<float(const Vec3&)>& inside, const std::function<bool(Zone)>& on) {
    std::vector<Ground> grounds;
    double area = 0.0;
    for (std::uint32_t t = 0; t < head.mesh.triangles.size(); ++t) {
        if (!on(head.mesh.zones[t])) continue;
        const auto& [a, b, c] = head.mesh.triangles[t];
        if (inside((head.places[a] + head.places[b] + head.places[c]) / (3.0F * head.size)) < -0.01F) continue;
        area += 0.5 * static_cast<double>(
                          glm::length(glm::cross(head.places[b] - head.places[a], head.places[c] - head.places[a])));
        grounds.push_back({t, area});
    }
    const auto count = static_cast<std::uint32_t>(area * a_square_metre);
    std::vector<Root> roots;
    roots.reserve(count);
    std::size_t ground = 0;
    for (std::uint32_t i = 0; i < count; ++i) {
        const std::uint32_t key = scrambled(seed + i);
        const double wanted = (static_cast<double>(i) + static_cast<double>(chance(key, 1))) / count * area;
        while (ground + 1 < grounds.size() && grounds[ground].until < wanted) ++ground;
        const auto& [a, b, c] = head.mesh.triangles[grounds[ground].triangle];
        const float u = std::sqrt(chance(key, 2));
        const float v = chance(key, 3);
        const Vec3 share(1.0F - u, u * (1.0F - v), u * v);
        Root root;
        root.place = share.x * head.places[a] + share.y * head.places[b] + share.z * head.places[c];
        root.inside = inside(root.place / head.size) + 0.0022F * wander(root.place, 0.021F, seed) +
                      0.0012F * wander(root.place, 0.007F, seed + 1);
        if (chance(key, 4) >= smooth(0.0F, soft, root.inside)) continue;
        root.normal = glm::normalize(share.x * head.normals[a] + share.y * head.normals[b] + share.z * head.normals[c]);
        root.key = key;
        roots.push_back(root);
    }
    return roots;
}

}  // namespace understudy
