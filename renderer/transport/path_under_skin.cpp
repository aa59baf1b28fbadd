// How a path goes on where the camera sees skin: the coat mirrors, and the rest walks under the skin to where it comes
// out again, which is lit like any other place.
#include <algorithm>
#include <bit>
#include <cmath>

#include "scatter/skin_walk.h"
#include "transport/dimensions.h"
#include "transport/light_sample.h"
#include "transport/path_tracer.h"

namespace understudy {

namespace {

// A coat mirrors so little of most lights that asking whether something stands in the way seldom pays: of what would
// bring less than this share of what white paper does, only so much is asked for, and makes up for the rest.
constexpr float kWeakCoat = 0.08F;

// The coat's own way on is followed a little more often than it carries light.
constexpr float kCoatOften = 1.5F;
// Where a lit cloth is near, for it is found that way alone.
constexpr float kCoatBeforeScrims = 0.5F;

// How far straight in the other side of an ear or a nostril is looked for, in mean free paths.
constexpr float kThinInPaths = 10.0F;

std::uint32_t key_of(const Vec4& numbers) {
    return std::bit_cast<std::uint32_t>(numbers.z) * 0x9e3779b9U ^
           std::bit_cast<std::uint32_t>(numbers.w) * 0x85ebca6bU;
}

bool may_be_thin(Zone zone) {
    return zone == Zone::kEar || zone == Zone::kNose || zone == Zone::kUpperLid || zone == Zone::kLowerLid;
}

}  // namespace

bool PathTracer::weighed(const Vertex& vertex) {
    return vertex.from.part != SkinPart::kFromBelow && wants_mis(*vertex.surface);
}

void PathTracer::enter_skin(Vertex& vertex, const Hit& hit, const Waves& waves) {
    vertex.entry = SkinEntry{hit.position - kLeaveOff * hit.geometric, hit.geometric, hit.index,
                             skin_depth(hit.spot, vertex.from.colour, waves)};
    vertex.from.part = SkinPart::kCoat;
    vertex.followed = std::min(1.0F, kCoatOften * vertex.from.reflected);
    if (vertex.to_scrims.share() > 0.0F) vertex.followed = std::max(vertex.followed, kCoatBeforeScrims);
}

void PathTracer::draw_entries(const Group& group, std::span<Vertex> vertices) const {
    WideSampler sampler;
    bool any = false;
    for (std::size_t i = 0; i < vertices.size(); ++i) {
        if (!vertices[i].entry) continue;
        any = true;
        const Walk& walk = group.walks[vertices[i].walk];
        sampler.set(i, group.path_of(walk).sampler, dimension_of_skin(walk.vertex));
    }
    if (!any) return;
    const auto numbers = sampler.numbers();
    for (std::size_t i = 0; i < vertices.size(); ++i) {
        if (vertices[i].entry)
            vertices[i].entry->numbers = {numbers[0][i], numbers[1][i], numbers[2][i], numbers[3][i]};
    }
}

// 0, or what makes up for those that are not asked for.
float PathTracer::kept_of_coat(const Vertex& vertex, std::size_t light, const Light4& brought,
                               const LightSample& sample) {
    const float cosine = glm::dot(sample.direction, vertex.frame.normal);
    const float paper = std::max(cosine, 0.0F) * sample.radiance / (kPi * sample.density);
    const float chance = brought.x / (kWeakCoat * paper);
    if (!(chance < 1.0F)) return 1.0F;
    constexpr float kGoldenShare = 0.618034F;
    const float place = vertex.entry->numbers.w + kGoldenShare * static_cast<float>(light);
    return place - std::floor(place) < chance ? 1.0F / chance : 0.0F;
}

void PathTracer::follow_coat(Group& group, const Vertex& vertex, const Vec4& numbers) const {
    if (numbers.w >= vertex.followed) return;
    Walk walk = group.walks[vertex.walk];
    walk.throughput /= vertex.followed;
    Vec4 rest = numbers;
    rest.w /= vertex.followed;
    walk.vertex += kCoatBranch;
    if (scatter_at(walk, vertex, rest)) group.start(walk);
}

SkinWalkResult PathTracer::wander(const SkinEntry& entry, Path& path) const {
    const Flesh& flesh = *stage_.flesh();
    const SkinMedium medium = skin_medium(entry.depth.flesh, path.waves);
    const Frame frame = Frame::around(entry.outward);
    WalkStart start{entry.inside, entry.outward, frame.to_world(-sample_cosine(entry.numbers.x, entry.numbers.y))};
    if (may_be_thin(stage_.sitter_mesh()->zone_of(entry.triangle))) {
        const float deep = kThinInPaths / least_of(medium.extinction);
        const auto other_side = flesh.wall({start.position, -entry.outward, 0.0F, deep});
        if (other_side) start.thickness = other_side->distance;
        ++path.light.rays;
    }
    auto result = walk_through_skin(medium, start, flesh, SkinWalkNumbers(key_of(entry.numbers)), tuning_);
    path.light.rays += static_cast<std::uint32_t>(result.rays);
    if (result.end == WalkEnd::kCapped) ++path.light.given_up;
    return result;
}

void PathTracer::pass_through_skin(Group& group, const Vertex& vertex) const {
    Walk& walk = group.walks[vertex.walk];
    Path& path = group.path_of(walk);
    const SkinEntry& entry = *vertex.entry;
    const auto ask = [&] { return wander(entry, path); };
    const SkinWalkResult result =
        group.memory != nullptr ? group.memory->walk(MemoryKey().with(entry.inside).with(entry.numbers), ask) : ask();
    if (result.end != WalkEnd::kEmerged) return;
    walk.throughput *= (1.0F - vertex.from.reflected) * entry.depth.passes * vec4_of(result.throughput);
    ++walk.vertex;
    const Hit out = stage_.emerged(*result.wall);
    // There is no melanin in the eye's white.
    if (!result.wall->on_eye) {
        walk.throughput *= skin_depth(out.spot, skin_colour(out.spot, path.waves), path.waves).passes;
    }
    group.emerged.push_back(vertex_at(out, vertex.walk, Frame::around(out.shading), approach_from_below(out.spot)));
}

}  // namespace understudy
