#include "transport/path_tracer.h"

#include <algorithm>

#include "kit/square_maps.h"
#include "scatter/fresnel.h"
#include "transport/dimensions.h"
#include "transport/light_sample.h"
#include "transport/receiver_way.h"

namespace understudy {

namespace {

// Radiance of even light of 1 lx: E = π L.
constexpr float kAmbientRadiance = 1.0F / kPi;
constexpr float kLeaveOff = 1e-5F;

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
        const Vertex vertex = vertex_at(*hit, walk, waves);
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

PathTracer::Vertex PathTracer::vertex_at(const Hit& hit, const Walk& walk, const Waves& waves) const {
    const Frame frame = Frame::around(hit.shading);
    Vertex vertex{hit.leave_from,
                  hit.start_toward(-hit.geometric),
                  frame,
                  hit.surface,
                  approach(*hit.surface, frame.to_local(-walk.ray.direction), waves),
                  {}};
    // A cloth is lit by every light on either side; what comes to it from another cloth, its own ways find.
    if (!stage_.scrims().empty() && !transmits(*hit.surface)) {
        vertex.to_scrims = WaysToScrims(stage_.scrims(), {vertex.leave_from, frame.normal, Response::kFlat});
    }
    return vertex;
}

void PathTracer::light_vertex(const Vertex& vertex, const Walk& walk, const Sampler& sampler, PathLight& light) const {
    light_side(vertex, Side::kFront, walk, sampler, light);
    if (transmits(*vertex.surface)) light_side(vertex, Side::kBack, walk, sampler, light);
}

void PathTracer::light_side(const Vertex& vertex, Side side, const Walk& walk, const Sampler& sampler,
                            PathLight& light) const {
    const bool matched = wants_mis(*vertex.surface);
    const auto& emitters = stage_.emitters();
    const float facing = side == Side::kFront ? 1.0F : -1.0F;
    const Vec3& start = side == Side::kFront ? vertex.leave_from : vertex.leave_behind;
    const Receiver receiver{start, facing * vertex.frame.normal, Response::kFlat};
    sample_every_light(emitters, receiver, sampler, walk.vertex, [&](std::size_t i, const LightSample& sample) {
        const Vec3 wi = vertex.frame.to_local(sample.direction);
        const ScatterValue scattered = scatter_value(*vertex.surface, vertex.from, wi);
        const Light4 value = scattered.value * std::max(facing * wi.z, 0.0F);
        if (!(largest(value) > 0.0F)) return;
        ++light.rays;
        const float passed = stage_.passes(sample.shadow_ray_from_receiver(start));
        if (!(passed > 0.0F)) return;
        float weight = passed;
        if (matched) {
            weight *=
                sample.density / (sample.density + vertex.to_scrims.with_own(scattered.density, sample.direction));
        }
        light.layers[i] += walk.throughput * value * (weight * sample.radiance / sample.density);
    });
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

bool PathTracer::scatter_at(Walk& walk, const Vertex& vertex, const Sampler& sampler) const {
    const Vec4 numbers = sampler.group(dimension_of_scatter(walk.vertex));
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
    walk.arrival = wants_mis(*vertex.surface) ? Arrival::kWeighed : Arrival::kCounted;
    walk.density = sample->density;
    walk.left_from = vertex.leave_from;
    walk.left_normal = vertex.frame.normal;
    walk.may_split = false;
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
        const float passed = stage_.passes(sample.shadow_ray(out->position + kLeaveOff * out->normal));
        light.layers[i] +=
            walk.throughput * colour * (cosine / kPi * out->transmittance * passed * sample.radiance / sample.density);
    });

    const Vec4 scatter = sampler.group(dimension_of_scatter(walk.vertex));
    const WayFromReceiver way = choose_way_from(stage_, receiver, scatter);
    const auto out = leave_through_cornea(eye, iris.position, way.direction);
    if (!out || !(way.weight > 0.0F)) return false;
    walk.throughput *= colour * (way.weight / kPi * out->transmittance);
    if (!survives(walk, scatter.w)) return false;
    walk.ray = {out->position + kLeaveOff * out->normal, way.direction};
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
        const float passed = stage_.passes(sample.shadow_ray(*from));
        const float response = response_to(place.response, glm::dot(sample.direction, place.normal));
        light.layers[i] += Light4(response * passed * sample.radiance / sample.density);
    });

    const WayFromReceiver way = choose_way_from(stage_, receiver, sampler.group(dimension_of_scatter(0)));
    const auto from = start(way.direction);
    if (!from || !(way.weight > 0.0F)) return;
    Walk walk;
    walk.ray = {*from, way.direction};
    walk.throughput = Light4(way.weight);
    walk.arrival = Arrival::kCounted;
    walk.vertex = 1;
    walk.may_split = false;
    follow(walk, waves, sampler, light, nullptr);
}

}  // namespace understudy
