#include "transport/path_tracer.h"

#include <algorithm>

#include "transport/dimensions.h"
#include "transport/light_sample.h"

namespace understudy {

namespace {

// Radiance of even light of 1 lx: E = π L.
constexpr float kAmbientRadiance = 1.0F / kPi;

float largest(const Light4& light) { return std::max({light.x, light.y, light.z, light.w}); }

bool is_grey(const Light4& light) { return light == Light4(light.x); }

}  // namespace

FirstSight PathTracer::look(const Ray& ray, const Waves& waves, const Sampler& sampler, PathLight& light) const {
    Path path{sampler, waves, ray, light};
    look(std::span(&path, 1));
    light = path.light;
    return path.sight;
}

void PathTracer::look(std::span<Path> paths, RayMemory* memory) const {
    Group group{paths, memory};
    group.walks.reserve(paths.size());
    for (std::size_t i = 0; i < paths.size(); ++i) {
        Walk walk;
        walk.ray = paths[i].ray;
        walk.sees = true;
        walk.path = static_cast<std::uint32_t>(i);
        group.start(walk);
    }
    follow(group);
}

void PathTracer::Group::start(const Walk& walk) {
    under_way.push_back(static_cast<std::uint32_t>(walks.size()));
    walks.push_back(walk);
}

void PathTracer::follow(Group& group) const {
    group.vertices.reserve(group.walks.size());
    std::vector<std::uint32_t> walks;
    while (!group.under_way.empty()) {
        // Those that go on are put under way anew.
        walks.swap(group.under_way);
        group.under_way.clear();
        group.vertices.clear();
        group.strands.clear();
        for_lanes(walks.size(),
                  [&](std::size_t first, std::size_t count) { meet(group, std::span(walks).subspan(first, count)); });
        for_lanes(group.vertices.size(), [&](std::size_t first, std::size_t count) {
            const auto vertices = std::span(group.vertices).subspan(first, count);
            draw_entries(group, vertices);
            treat(group, vertices);
        });
        group.emerged.clear();
        for (const Vertex& vertex : group.vertices) {
            if (vertex.entry) pass_through_skin(group, vertex);
        }
        for_lanes(group.emerged.size(), [&](std::size_t first, std::size_t count) {
            treat(group, std::span(group.emerged).subspan(first, count));
        });
        for_lanes(group.strands.size(), [&](std::size_t first, std::size_t count) {
            const auto strands = std::span(group.strands).subspan(first, count);
            light_strands(group, strands);
            scatter_at_strands(group, strands);
        });
    }
}

void PathTracer::treat(Group& group, std::span<const Vertex> vertices) const {
    light_vertices(group, vertices, Side::kFront);
    light_vertices(group, vertices, Side::kBack);
    scatter(group, vertices);
}

void PathTracer::meet(Group& group, std::span<const std::uint32_t> walks) const {
    WideRays rays;
    for (std::size_t i = 0; i < walks.size(); ++i) rays.set(i, group.walks[walks[i]].ray);
    const auto meetings = stage_.meet(rays, first_lanes(walks.size()), group.memory);
    for (std::size_t i = 0; i < walks.size(); ++i) arrive(group, walks[i], meetings[i]);
}

void PathTracer::arrive(Group& group, std::uint32_t index, const Meeting& meeting) const {
    Walk& walk = group.walks[index];
    Path& path = group.path_of(walk);
    ++path.light.rays;
    if (meeting.distance == kInfinity) return meet_ambient(walk, path.light);
    Hit hit = stage_.hit_at(walk.ray, meeting);
    if (hit.thing == Thing::kEmitter) return meet_emitter(walk, hit, path.light);
    if (hit.thing == Thing::kLens) return cross_lens(group, index, hit);
    if (hit.thing == Thing::kStrand) return arrive_at_strand(group, index, hit);
    walk.only_hair = false;
    if (hit.thing == Thing::kCornea && !white_covers(path, walk, hit)) return cross_cornea(group, index, hit);
    if (hit.thing == Thing::kCornea || hit.thing == Thing::kEyeWhite) return meet_white(group, index, hit);
    if (path.light.detours != nullptr) path.light.detours->meet(hit.thing, path.light.layers);
    if (hit.thing == Thing::kWall) meet_ambient(walk, path.light);
    if (walk.sees && hit.thing == Thing::kSitter) hit = stage_.relieved(hit, walk.ray);
    const bool seen_skin = walk.sees && is_skin(*hit.surface);
    const Frame frame = Frame::around(hit.shading);
    const Vec3 wo = frame.to_local(-walk.ray.direction);
    const Approach from =
        is_skin(*hit.surface) ? approach(hit.spot, wo, path.waves) : approach(*hit.surface, wo, path.waves);
    if (walk.sees) {
        path.sight = {seen_skin ? albedo_over(hit.spot, from.colour) : albedo(*hit.surface, path.waves), hit.shading,
                      walk.before + hit.distance};
        walk.sees = false;
    }
    group.vertices.push_back(vertex_at(hit, index, frame, from));
    if (seen_skin && stage_.flesh() != nullptr) enter_skin(group.vertices.back(), hit, path.waves);
}

void PathTracer::book(const Walk& walk, PathLight& light, std::size_t layer, const Light4& brought) {
    if ((light.asked >> layer & 1U) == 0) return;
    light.layers[layer] += walk.throughput * brought;
    if (walk.only_hair) light.by_hair[layer] += walk.throughput * brought;
}

void PathTracer::meet_ambient(Walk& walk, PathLight& light) const {
    if (!stage_.has_ambient() || !walk.ambient_open) return;
    book(walk, light, stage_.emitters().size(), Light4(kAmbientRadiance));
    walk.ambient_open = false;
}

void PathTracer::meet_emitter(const Walk& walk, const Hit& hit, PathLight& light) const {
    const bool asked = (light.asked >> hit.index & 1U) != 0;
    if (!asked || !hit.luminous || walk.arrival == Arrival::kCounted) return;
    const Emitter& emitter = stage_.emitters()[hit.index];
    float weight = 1.0F;
    if (walk.arrival == Arrival::kWeighed) {
        const float other = light_density(emitter, {walk.left_from, walk.left_normal, walk.left_response}, hit);
        weight = walk.density / (walk.density + other);
    }
    const float brought = weight * emitter.radiance(hit.position, -walk.ray.direction);
    book(walk, light, hit.index, Light4(brought));
    // Straight from a mirror image, and not through a cloth, whose open places are met by chance.
    const bool mirrored =
        walk.arrival == Arrival::kSeen && walk.vertex >= kMirrorBranch && walk.vertex % kMirrorBranch == 0;
    if (mirrored && is_grey(walk.throughput)) light.glints[hit.index] += walk.throughput.x * brought;
}

PathTracer::Vertex PathTracer::vertex_at(const Hit& hit, std::uint32_t walk, const Frame& frame,
                                         const Approach& from) const {
    Vertex vertex{walk, hit.leave_from, hit.start_toward(-hit.geometric), frame, hit.surface, from, {}};
    // A cloth is lit by every light on either side; what comes to it from another cloth, its own ways find.
    if (!stage_.scrims().empty() && !transmits(*hit.surface)) {
        vertex.to_scrims = WaysToScrims(stage_.scrims(), {vertex.leave_from, frame.normal, Response::kFlat});
    }
    return vertex;
}

PathTracer::Vertex PathTracer::vertex_at(const Hit& hit, std::uint32_t walk, const Vec3& wo, const Waves& waves) const {
    const Frame frame = Frame::around(hit.shading);
    return vertex_at(hit, walk, frame, approach(*hit.surface, frame.to_local(wo), waves));
}

void PathTracer::light_vertices(const Group& group, std::span<const Vertex> vertices, Side side) const {
    const float facing = side == Side::kFront ? 1.0F : -1.0F;
    std::array<const Vertex*, kLanes> lit_ones{};
    LightSampling lights;
    for (const Vertex& vertex : vertices) {
        if (side == Side::kBack && !transmits(*vertex.surface)) continue;
        const Walk& walk = group.walks[vertex.walk];
        const Vec3& start = side == Side::kFront ? vertex.leave_from : vertex.leave_behind;
        lit_ones[lights.count()] = &vertex;
        lights.add({start, facing * vertex.frame.normal, Response::kFlat}, group.path_of(walk).sampler, walk.vertex);
    }
    const auto& emitters = stage_.emitters();
    lights.sample_lights(emitters, group.asked(), [&](std::size_t i, const WideLightSamples& samples, LaneBits lit) {
        std::array<Light4, kLanes> brought;
        LaneBits asked = 0;
        for_each_lane(lit, [&](std::size_t lane) {
            const LightSample sample = samples.one(lane, emitters[i]);
            brought[lane] = sent_on(*lit_ones[lane], facing, sample);
            if (lit_ones[lane]->entry) brought[lane] *= kept_of_coat(*lit_ones[lane], i, brought[lane], sample);
            if (largest(brought[lane]) > 0.0F) asked |= 1U << lane;
        });
        const Wide passed = stage_.passed(samples.shadow_rays(lights.receivers()), asked);
        for_each_lane(asked, [&](std::size_t lane) {
            const Walk& walk = group.walks[lit_ones[lane]->walk];
            PathLight& light = group.path_of(walk).light;
            ++light.rays;
            light.layers[i] += walk.throughput * brought[lane] * passed[lane];
        });
    });
}

// Of a light, by the surface, if nothing stands in the way. facing: 1 for light on the front, −1 on the back.
Light4 PathTracer::sent_on(const Vertex& vertex, float facing, const LightSample& sample) {
    const Vec3 wi = vertex.frame.to_local(sample.direction);
    const ScatterValue scattered = scatter_value(*vertex.surface, vertex.from, wi);
    float density = sample.density;
    if (weighed(vertex)) density += vertex.followed * vertex.to_scrims.with_own(scattered.density, sample.direction);
    return scattered.value * (std::max(facing * wi.z, 0.0F) * sample.radiance / density);
}

std::optional<ScatterSample> PathTracer::choose_way(const Vertex& vertex, const Vec3& u) {
    const float share = vertex.to_scrims.share();
    if (!(share > 0.0F)) return sample_scatter(*vertex.surface, vertex.from, u);
    Vec3 wi;
    if (u.x < share) {
        wi = vertex.frame.to_local(vertex.to_scrims.sample({u.x / share, u.y, u.z}));
    } else {
        const auto own = sample_scatter(*vertex.surface, vertex.from, {(u.x - share) / (1.0F - share), u.y, u.z});
        if (!own) return std::nullopt;
        wi = own->wi;
    }
    const ScatterValue scattered = scatter_value(*vertex.surface, vertex.from, wi);
    const float density = vertex.to_scrims.with_own(scattered.density, vertex.frame.to_world(wi));
    if (!(density > 0.0F)) return std::nullopt;
    return ScatterSample{wi, scattered.value * (std::max(wi.z, 0.0F) / density), density, false};
}

void PathTracer::scatter(Group& group, std::span<const Vertex> vertices) const {
    WideSampler sampler;
    for (std::size_t i = 0; i < vertices.size(); ++i) {
        const Walk& walk = group.walks[vertices[i].walk];
        sampler.set(i, group.path_of(walk).sampler, dimension_of_scatter(walk.vertex));
    }
    const auto numbers = sampler.numbers();
    for (std::size_t i = 0; i < vertices.size(); ++i) {
        const Vec4 own(numbers[0][i], numbers[1][i], numbers[2][i], numbers[3][i]);
        const std::uint32_t walk = vertices[i].walk;
        if (vertices[i].entry) {
            follow_coat(group, vertices[i], own);
            continue;
        }
        if (scatter_at(group.walks[walk], vertices[i], own)) group.under_way.push_back(walk);
    }
}

bool PathTracer::scatter_at(Walk& walk, const Vertex& vertex, const Vec4& numbers) const {
    const auto sample = choose_way(vertex, Vec3(numbers.x, numbers.y, numbers.z));
    if (!sample) return false;
    walk.throughput *= sample->weight;
    // A way to a lit cloth is a way to a light: one of few that are kept, and made up for, would be a spark.
    const Vec3 direction = vertex.frame.to_world(sample->wi);
    if (!vertex.to_scrims.leads_there(direction) && !survives(walk, numbers.w)) return false;
    ++walk.vertex;
    if (sample->delta) {
        // Between the threads: the light beyond counts as it would have counted without the cloth.
        walk.ray.origin = vertex.leave_behind;
        return true;
    }
    walk.ray = {sample->wi.z < 0.0F ? vertex.leave_behind : vertex.leave_from, direction};
    walk.arrival = weighed(vertex) ? Arrival::kWeighed : Arrival::kCounted;
    walk.density = vertex.followed * sample->density;
    walk.left_from = vertex.leave_from;
    walk.left_normal = vertex.frame.normal;
    walk.left_response = Response::kFlat;
    walk.may_split = false;
    return true;
}

float PathTracer::strength(const Walk& walk) { return largest(walk.throughput) / walk.began_with; }

bool PathTracer::is_followed(Walk& walk, float chance, float u) {
    if (chance >= 1.0F) return true;
    if (!(u < chance)) return false;
    walk.throughput /= chance;
    return true;
}

bool PathTracer::survives(Walk& walk, float u, float often) {
    constexpr std::uint32_t kSureVertices = 2;
    const float carried = strength(walk);
    if (walk.vertex % kMirrorBranch < kSureVertices) return carried > 0.0F;
    return is_followed(walk, often * carried, u);
}

}  // namespace understudy
