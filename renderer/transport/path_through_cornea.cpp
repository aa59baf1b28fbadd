// How a path goes on where it meets an eye's cornea: mirrored, and inward to the iris.
#include <algorithm>

#include "scatter/fresnel.h"
#include "stage/cornea_refraction.h"
#include "transport/dimensions.h"
#include "transport/light_sample.h"
#include "transport/path_tracer.h"
#include "transport/receiver_way.h"

namespace understudy {

namespace {

// The iris darkens toward the limbus, and its rim to the eye's wall is darker still. Invented shares, no source.
float limbus_share(const IrisHit& iris) {
    if (!iris.on_iris) return 0.2F;
    const float place = std::clamp((iris.radius - 0.0050F) / 0.0009F, 0.0F, 1.0F);
    return 1.0F - 0.75F * place * place * (3.0F - 2.0F * place);
}

}  // namespace

void PathTracer::cross_cornea(Group& group, std::uint32_t index_of_walk, const Hit& hit) const {
    Walk walk = group.walks[index_of_walk];
    const Vec3 back = -walk.ray.direction;
    const float cosine = glm::dot(back, hit.geometric);
    const auto index = static_cast<float>(kCorneaIndex);
    const float reflected = dielectric_fresnel(cosine, index);
    const bool sees = walk.sees;
    walk.sees = false;

    Walk mirror = walk;
    mirror.ray = {hit.leave_from, 2.0F * cosine * hit.geometric - back};
    mirror.throughput *= reflected;
    mirror.arrival = Arrival::kSeen;
    mirror.may_split = false;
    mirror.vertex += kMirrorBranch;
    // Only what the camera sees directly divides: a cornea met after a bounce is followed inward alone, which loses the
    // 3 % that it would mirror.
    if (walk.may_split) group.start(mirror);

    const auto inward = refract(back, hit.geometric, index);
    if (!inward) return;
    const Eye& eye = stage_.eyes()[hit.index];
    const auto iris = reach_iris(eye, hit.position, *inward);
    if (!iris) return;
    // Radiance falls by the index squared on the way out of the eye.
    walk.throughput *= (1.0F - reflected) / (index * index);
    Path& path = group.path_of(walk);
    if (sees) {
        const bool pupil = iris->on_iris && iris->radius < static_cast<float>(eye.pupil_radius_m);
        path.sight = {pupil ? Light4(0.0F) : albedo(stage_.iris_surface(), path.waves) * limbus_share(*iris),
                      iris->normal, walk.before + hit.distance + glm::length(iris->position - hit.position)};
    }
    walk.may_split = false;
    if (!scatter_at_iris(walk, eye, *iris, path)) return;
    group.walks[index_of_walk] = walk;
    group.under_way.push_back(index_of_walk);
}

void PathTracer::light_iris(const Walk& walk, const Eye& eye, const IrisHit& iris, const Light4& colour,
                            Path& path) const {
    LightSampling lights;
    // As a dome, for the cornea brings light to the iris from beyond its plane.
    lights.add({iris.position, iris.normal, Response::kDome}, path.sampler, walk.vertex);
    const auto& emitters = stage_.emitters();
    lights.sample_every_light(emitters, [&](std::size_t i, const WideLightSamples& samples, LaneBits) {
        const LightSample sample = samples.one(0, emitters[i]);
        const auto way = bent_way(eye, iris.position, sample.point);
        if (!way) return;
        const float cosine = glm::dot(way->inside, iris.normal);
        if (!(cosine > 0.0F)) return;
        ++path.light.rays;
        const float passed = stage_.passes(shadow_ray(way->exit + kLeaveOff * way->normal, sample.point));
        // The light's area for this sample, square to the way; radiance grows by the index squared on the way in.
        constexpr auto kIndex = static_cast<float>(kCorneaIndex);
        const float area = sample.distance * sample.distance / sample.density;
        path.light.layers[i] +=
            walk.throughput * colour *
            (cosine / kPi * way->transmittance * kIndex * kIndex * way->spread * area * passed * sample.radiance);
    });
}

bool PathTracer::scatter_at_iris(Walk& walk, const Eye& eye, const IrisHit& iris, Path& path) const {
    if (iris.on_iris && iris.radius < static_cast<float>(eye.pupil_radius_m)) return false;
    walk.throughput *= limbus_share(iris);
    const Light4 colour = albedo(stage_.iris_surface(), path.waves);
    light_iris(walk, eye, iris, colour, path);

    // What surfaces send reaches the iris by straight ways: it comes from all around, and bending it changes little.
    const Vec4 scatter = path.sampler.group(dimension_of_scatter(walk.vertex));
    const WayFromReceiver way = choose_way_from(stage_, {iris.position, iris.normal, Response::kFlat}, scatter);
    const auto out = leave_through_cornea(eye, iris.position, way.direction);
    if (!out || !(way.weight > 0.0F)) return false;
    walk.throughput *= colour * (way.weight / kPi * out->transmittance);
    if (!survives(walk, scatter.w)) return false;
    walk.ray = {out->position + kLeaveOff * out->normal, way.direction};
    walk.arrival = Arrival::kCounted;
    ++walk.vertex;
    return true;
}

}  // namespace understudy
