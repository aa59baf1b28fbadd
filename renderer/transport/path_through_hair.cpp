// How a path goes on where it meets a hair: lit from all around, and scattered to all sides.
//
// A fibre's lobes are told to the lights by the balance heuristic with the way that the path goes on by: the straight
// way through is narrow, and a light behind the head lies in it. Veach and Guibas, SIGGRAPH 1995.
#include "transport/dimensions.h"
#include "transport/hair_bands.h"
#include "transport/light_sample.h"
#include "transport/path_tracer.h"

namespace understudy {

namespace {

float largest(const Light4& light) { return std::max({light.x, light.y, light.z, light.w}); }

Frame frame_along(const Vec3& tangent) {
    const Frame round = Frame::around(tangent);
    return {tangent, round.tangent, round.bitangent};
}

// A path's first hair is as it is. On the next ones' lobes are widened, a stated approximation: a light met straight
// through a third or fourth narrow lobe is a spark, one path in a hundred with a quarter of the light. What a path has
// gone through before spreads it as far. A. Kaplanyan and C. Dachsbacher, "Path Space Regularization for Holistic and
// Robust Light Transport", Eurographics 2013. Radians; DEVELOPERS.md tells how much it shifts.
float blur_after(std::uint32_t vertices) {
    constexpr float kOnSecond = 0.15F;
    constexpr float kOnLater = 0.25F;
    return vertices == 0 ? 0.0F : (vertices == 1 ? kOnSecond : kOnLater);
}

// A path is followed from hair to hair so many times as often as it carries light. Variance times time, against
// lighting every second hair and following later ones just as often as they carry light: 0.75 in dark curls, 0.95 in
// blond hair.
constexpr float kFollowedOften = 2.0F;

}  // namespace

void PathTracer::arrive_at_strand(Group& group, std::uint32_t index, const Hit& hit) const {
    Walk& walk = group.walks[index];
    Path& path = group.path_of(walk);
    // The way here was worth its ray, which might have met a light; lighting the hair is dear, and dark hair before it
    // has left little to bring back.
    if (walk.vertex % kMirrorBranch == 1) {
        const float u = path.sampler.group(dimension_of_scatter(walk.vertex + kInwardBranch)).x;
        if (!is_followed(walk, kFollowedOften * strength(walk), u)) return;
    }
    const Frame frame = frame_along(hit.strand.tangent);
    const WholeFibre from =
        approach_whole_fibre(*hit.strand.fibre, frame.to_local(-walk.ray.direction), hit.strand.across, path.waves,
                             blur_after(walk.vertex % kMirrorBranch));
    walk.only_hair = walk.only_hair && is_pale(*hit.strand.fibre);
    if (walk.sees) {
        path.sight = {fibre_albedo(from), hit.shading, walk.before + hit.distance};
        walk.sees = false;
    }
    group.strands.push_back({index, hit.strand, frame, from});
}

void PathTracer::light_strands(const Group& group, std::span<const StrandVertex> vertices) const {
    LightSampling lights;
    for (const StrandVertex& vertex : vertices) {
        const Walk& walk = group.walks[vertex.walk];
        lights.add({vertex.place.axis, vertex.frame.normal, Response::kAround}, group.path_of(walk).sampler,
                   walk.vertex);
    }
    const auto& emitters = stage_.emitters();
    lights.sample_lights(emitters, group.asked(), [&](std::size_t i, const WideLightSamples& samples, LaneBits lit) {
        std::array<Light4, kLanes> brought;
        WideRays rays;
        LaneBits asked = 0;
        for_each_lane(lit, [&](std::size_t lane) {
            const StrandVertex& vertex = vertices[lane];
            const LightSample sample = samples.one(lane, emitters[i]);
            const FibreValue scattered = fibre_value(vertex.from, vertex.frame.to_local(sample.direction));
            brought[lane] = scattered.value * (sample.radiance / (sample.density + scattered.density));
            if (!(largest(brought[lane]) > 0.0F)) return;
            asked |= 1U << lane;
            rays.set(lane, sample.shadow_ray(vertex.place.leave(sample.direction)));
        });
        const Wide passed = stage_.passed(rays, asked);
        for_each_lane(asked, [&](std::size_t lane) {
            const Walk& walk = group.walks[vertices[lane].walk];
            PathLight& light = group.path_of(walk).light;
            ++light.rays;
            book(walk, light, i, brought[lane] * passed[lane]);
        });
    });
}

// Clear hairs take nothing, and a path among them would go on for as long as it does not find the way out.
bool PathTracer::goes_on(Walk& walk, float u) {
    constexpr std::uint32_t kFreeVertices = 6;
    constexpr float kChance = 0.85F;
    if (walk.vertex % kMirrorBranch < kFreeVertices) return survives(walk, u, kFollowedOften);
    return is_followed(walk, kChance, u) && survives(walk, u / kChance, kFollowedOften);
}

void PathTracer::scatter_at_strands(Group& group, std::span<const StrandVertex> vertices) const {
    WideSampler sampler;
    for (std::size_t i = 0; i < vertices.size(); ++i) {
        const Walk& walk = group.walks[vertices[i].walk];
        sampler.set(i, group.path_of(walk).sampler, dimension_of_scatter(walk.vertex));
    }
    const auto numbers = sampler.numbers();
    for (std::size_t i = 0; i < vertices.size(); ++i) {
        const StrandVertex& vertex = vertices[i];
        Walk& walk = group.walks[vertex.walk];
        const FibreSample sample = sample_fibre(vertex.from, {numbers[0][i], numbers[1][i], numbers[2][i]});
        walk.throughput *= sample.weight;
        if (!goes_on(walk, numbers[3][i])) continue;
        ++walk.vertex;
        const Vec3 direction = vertex.frame.to_world(sample.wi);
        walk.ray = {vertex.place.leave(direction), direction};
        walk.arrival = Arrival::kWeighed;
        walk.density = sample.density;
        walk.left_from = vertex.place.axis;
        walk.left_normal = vertex.frame.normal;
        walk.left_response = Response::kAround;
        walk.may_split = false;
        group.under_way.push_back(vertex.walk);
    }
}

}  // namespace understudy
