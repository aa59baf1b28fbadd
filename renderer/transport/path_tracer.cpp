#include "transport/path_tracer.h"

#include <algorithm>

#include "kit/square_maps.h"
#include "scatter/fresnel.h"
#include "transport/dimensions.h"
#include "transport/light_sample.h"

namespace understudy {

namespace {

// Radiance of even light of 1 lx: E = π L.
constexpr float kAmbientRadiance = 1.0F / kPi;
constexpr float kLeaveOff = 1e-5F;

// A direction about +z with density (1 + cosine) / 4π: a dome receptor's response.
Vec3 sample_dome(float u, float v) {
    const float cosine = std::min(1.0F, 2.0F * std::sqrt(u) - 1.0F);
    const float sine = std::sqrt(std::max(0.0F, 1.0F - cosine * cosine));
    return {sine * std::cos(2.0F * kPi * v), sine * std::sin(2.0F * kPi * v), cosine};
}

// One stratified sample of every light for a receiver; visit(index, sample) for those that can reach it.
template <class Visitor>
void sample_every_light(const std::vector<Emitter>& emitters, const Receiver& receiver, const Sampler& sampler,
                        std::uint32_t vertex, const Visitor& visit) {
    Vec4 numbers(0.0F);
    for (std::size_t i = 0; i < emitters.size(); ++i) {
        if (i % 2 == 0) numbers = sampler.group(dimension_of_lights(vertex, i));
        const Vec2 u = i % 2 == 0 ? Vec2(numbers.x, numbers.y) : Vec2(numbers.z, numbers.w);
        if (const auto sample = sample_light(emitters[i], receiver, u)) visit(i, *sample);
    }
}

float largest(const Light4& light) { return std::max({light.x, light.y, light.z, light.w}); }

// The iris darkens toward the limbus, and its rim to the eye's wall is darker still. Invented shares, no source.
float limbus_share(const IrisHit& iris) {
    if (!iris.on_iris) return 0.2F;
    const float place = std::clamp((iris.radius - 0.0050F) / 0.0009F, 0.0F, 1.0F);
    return 1.0F - 0.75F * place * place * (3.0F - 2.0F * place);
}

}  // namespace

FirstSight PathTracer::look(const Ray& ray, const Waves& waves, const Sampler& sampler, PathLight& light) const {
    FirstSight sight;
    Walk walk;
    walk.ray = ray;
    follow(walk, waves, sampler, light, &sight);
    return sight;
}

void PathTracer::follow(Walk walk, const Waves& waves, const Sampler& sampler, PathLight& light,
                        FirstSight* sight) const {
    for (;;) {
        ++light.rays;
        const auto hit = stage_.intersect(walk.ray);
        if (!hit) {
            meet_ambient(walk, light);
            return;
        }
        if (hit->thing == Thing::kEmitter) {
            meet_emitter(walk, *hit, light);
            return;
        }
        if (hit->thing == Thing::kCornea) {
            if (!cross_cornea(walk, *hit, waves, sampler, light, sight)) return;
            sight = nullptr;
            continue;
        }
        if (hit->thing == Thing::kWall) meet_ambient(walk, light);
        if (sight != nullptr) {
            *sight = {albedo(*hit->surface, waves), hit->shading, hit->distance};
            sight = nullptr;
        }
        const Frame frame = Frame::around(hit->shading);
        const Vertex vertex{hit->leave_from, frame, hit->surface,
                            approach(*hit->surface, frame.to_local(-walk.ray.direction), waves)};
        light_vertex(vertex, walk, sampler, light);
        if (!scatter_at(walk, vertex, sampler)) return;
    }
}

void PathTracer::meet_ambient(Walk& walk, PathLight& light) const {
    if (!stage_.has_ambient() || !walk.ambient_open) return;
    light.layers[stage_.emitters().size()] += walk.throughput * kAmbientRadiance;
    walk.ambient_open = false;
}

void PathTracer::meet_emitter(const Walk& walk, const Hit& hit, PathLight& light) const {
    if (!hit.luminous || walk.arrival == Arrival::kCounted) return;
    const Emitter& emitter = stage_.emitters()[hit.index];
    float weight = 1.0F;
    if (walk.arrival == Arrival::kWeighed) {
        const float other = light_density(emitter, {walk.left_from, walk.left_normal, Response::kFlat}, hit);
        weight = walk.density / (walk.density + other);
    }
    light.layers[hit.index] += walk.throughput * (weight * emitter.radiance(hit.position, -walk.ray.direction));
}

void PathTracer::light_vertex(const Vertex& vertex, const Walk& walk, const Sampler& sampler, PathLight& light) const {
    const bool matched = wants_mis(*vertex.surface);
    const auto& emitters = stage_.emitters();
    const Receiver receiver{vertex.leave_from, vertex.frame.normal, Response::kFlat};
    sample_every_light(emitters, receiver, sampler, walk.vertex, [&](std::size_t i, const LightSample& sample) {
        const Vec3 wi = vertex.frame.to_local(sample.direction);
        const ScatterValue scattered = scatter_value(*vertex.surface, vertex.from, wi);
        const Light4 value = scattered.value * std::max(wi.z, 0.0F);
        if (!(largest(value) > 0.0F)) return;
        ++light.rays;
        if (stage_.blocks(sample.shadow_ray_from_receiver(vertex.leave_from))) return;
        const float weight = matched ? sample.density / (sample.density + scattered.density) : 1.0F;
        light.layers[i] += walk.throughput * value * (weight * sample.radiance / sample.density);
    });
}

bool PathTracer::scatter_at(Walk& walk, const Vertex& vertex, const Sampler& sampler) const {
    const Vec4 numbers = sampler.group(dimension_of_scatter(walk.vertex));
    const auto sample = sample_scatter(*vertex.surface, vertex.from, Vec3(numbers.x, numbers.y, numbers.z));
    if (!sample) return false;
    walk.throughput *= sample->weight;
    if (!survives(walk, numbers.w)) return false;
    walk.ray = {vertex.leave_from, vertex.frame.to_world(sample->wi)};
    walk.arrival = wants_mis(*vertex.surface) ? Arrival::kWeighed : Arrival::kCounted;
    walk.density = sample->density;
    walk.left_from = vertex.leave_from;
    walk.left_normal = vertex.frame.normal;
    walk.may_split = false;
    ++walk.vertex;
    return true;
}

bool PathTracer::survives(Walk& walk, float u) const {
    constexpr std::uint32_t kSureVertices = 2;
    const float strength = largest(walk.throughput);
    if (!(strength > 0.0F)) return false;
    if (walk.vertex < kSureVertices || strength >= 1.0F) return true;
    if (u >= strength) return false;
    walk.throughput /= strength;
    return true;
}

bool PathTracer::cross_cornea(Walk& walk, const Hit& hit, const Waves& waves, const Sampler& sampler, PathLight& light,
                              FirstSight* sight) const {
    const Vec3 back = -walk.ray.direction;
    const float cosine = glm::dot(back, hit.geometric);
    const auto index = static_cast<float>(kCorneaIndex);
    const float reflected = dielectric_fresnel(cosine, index);

    Walk mirror = walk;
    mirror.ray = {hit.leave_from, 2.0F * cosine * hit.geometric - back};
    mirror.throughput *= reflected;
    mirror.arrival = Arrival::kSeen;
    mirror.may_split = false;
    // Only what the camera sees directly divides: a cornea met after a bounce is followed inward alone, which loses the
    // 3 % that it would mirror.
    if (walk.may_split) {
        mirror.vertex += kMirrorBranch;
        follow(mirror, waves, sampler, light, nullptr);
    }

    const auto inward = refract(back, hit.geometric, index);
    if (!inward) return false;
    const Eye& eye = stage_.eyes()[hit.index];
    const auto iris = reach_iris(eye, hit.position, *inward);
    if (!iris) return false;
    // Radiance falls by the index squared on the way out of the eye.
    walk.throughput *= (1.0F - reflected) / (index * index);
    if (sight != nullptr) {
        const bool pupil = iris->on_iris && iris->radius < static_cast<float>(eye.pupil_radius_m);
        *sight = {pupil ? Light4(0.0F) : albedo(stage_.iris_surface(), waves) * limbus_share(*iris), iris->normal,
                  hit.distance + glm::length(iris->position - hit.position)};
    }
    walk.may_split = false;
    return scatter_at_iris(walk, eye, *iris, waves, sampler, light);
}

bool PathTracer::scatter_at_iris(Walk& walk, const Eye& eye, const IrisHit& iris, const Waves& waves,
                                 const Sampler& sampler, PathLight& light) const {
    if (iris.on_iris && iris.radius < static_cast<float>(eye.pupil_radius_m)) return false;
    walk.throughput *= limbus_share(iris);
    const Light4 colour = albedo(stage_.iris_surface(), waves);
    const auto& emitters = stage_.emitters();
    const Receiver receiver{iris.position, iris.normal, Response::kFlat};
    sample_every_light(emitters, receiver, sampler, walk.vertex, [&](std::size_t i, const LightSample& sample) {
        const float cosine = glm::dot(sample.direction, iris.normal);
        const auto out = leave_through_cornea(eye, iris.position, sample.direction);
        if (!(cosine > 0.0F) || !out) return;
        ++light.rays;
        if (stage_.blocks(sample.shadow_ray(out->position + kLeaveOff * out->normal))) return;
        light.layers[i] +=
            walk.throughput * colour * (cosine / kPi * out->transmittance * sample.radiance / sample.density);
    });

    const Vec4 scatter = sampler.group(dimension_of_scatter(walk.vertex));
    const Frame frame = Frame::around(iris.normal);
    const Vec3 direction = frame.to_world(sample_cosine(scatter.y, scatter.z));
    const auto out = leave_through_cornea(eye, iris.position, direction);
    if (!out) return false;
    walk.throughput *= colour * out->transmittance;
    if (!survives(walk, scatter.w)) return false;
    walk.ray = {out->position + kLeaveOff * out->normal, direction};
    walk.arrival = Arrival::kCounted;
    ++walk.vertex;
    return true;
}

void PathTracer::gather(const Gathering& place, const Waves& waves, const Sampler& sampler, PathLight& light) const {
    const Frame frame = Frame::around(place.normal);
    Vec3 position = place.position;
    if (place.radius > 0.0F) {
        const Vec4 numbers = sampler.group(kFilmAndLens);
        const DiscPoint disc = square_to_disc({numbers.x, numbers.y});
        position += place.radius * disc.radius *
                    (std::cos(disc.angle) * frame.tangent + std::sin(disc.angle) * frame.bitangent);
    }
    const auto start = [&](const Vec3& direction) -> std::optional<Vec3> {
        if (place.behind_cornea == nullptr) return position;
        const auto out = leave_through_cornea(*place.behind_cornea, position, direction);
        if (!out) return std::nullopt;
        return out->position + kLeaveOff * out->normal;
    };
    const auto& emitters = stage_.emitters();
    const Receiver receiver{position, place.normal, place.response};
    sample_every_light(emitters, receiver, sampler, 0, [&](std::size_t i, const LightSample& sample) {
        const auto from = start(sample.direction);
        if (!from) return;
        ++light.rays;
        if (stage_.blocks(sample.shadow_ray(*from))) return;
        const float response = response_to(place.response, glm::dot(sample.direction, place.normal));
        light.layers[i] += Light4(response * sample.radiance / sample.density);
    });

    const Vec4 scatter = sampler.group(dimension_of_scatter(0));
    const bool flat = place.response == Response::kFlat;
    const Vec3 local = flat ? sample_cosine(scatter.y, scatter.z) : sample_dome(scatter.y, scatter.z);
    const Vec3 direction = frame.to_world(local);
    const auto from = start(direction);
    if (!from) return;
    Walk walk;
    walk.ray = {*from, direction};
    walk.throughput = Light4(flat ? kPi : 2.0F * kPi);  // the response's integral over all directions
    walk.arrival = Arrival::kCounted;
    walk.vertex = 1;
    walk.may_split = false;
    follow(walk, waves, sampler, light, nullptr);
}

}  // namespace understudy
