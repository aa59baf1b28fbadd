// How a path goes on where it meets an eye's cornea: mirrored, and inward to the iris.
#include "scatter/fresnel.h"
#include "stage/cornea_refraction.h"
#include "stage/eye_frame.h"
#include "transport/dimensions.h"
#include "transport/light_sample.h"
#include "transport/path_tracer.h"
#include "transport/receiver_way.h"

namespace understudy {

PathTracer::IrisLook PathTracer::look_of_iris(std::uint32_t index, const IrisHit& iris, const Waves& waves) const {
    const Eye& eye = stage_.eyes()[index];
    if (iris.on_iris && iris.radius < static_cast<float>(eye.pupil_radius_m)) return {iris.normal, Light4(0.0F)};
    const IrisPattern& pattern = stage_.iris();
    const EyeFrame frame(eye);
    const Vec3 place = frame.to_local(Vec3(Double3(iris.position) - iris_centre(eye)));
    const auto patch = pattern.patch(Vec2(place), static_cast<float>(eye.pupil_radius_m), 100U * index);
    if (!iris.on_iris) return {iris.normal, pattern.colour(patch, waves)};
    return {frame.to_world(glm::normalize(Vec3(-patch.slope, 1.0F))), pattern.colour(patch, waves)};
}

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
    mirror.began_with = reflected;
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
    const IrisLook look = look_of_iris(hit.index, *iris, path.waves);
    if (sees) {
        path.sight = {look.colour, look.normal,
                      walk.before + hit.distance + glm::length(iris->position - hit.position)};
    }
    walk.may_split = false;
    if (!scatter_at_iris(walk, eye, *iris, look, path)) return;
    group.walks[index_of_walk] = walk;
    group.under_way.push_back(index_of_walk);
}

void PathTracer::light_iris(const Walk& walk, const Eye& eye, const IrisHit& iris, const IrisLook& look,
                            Path& path) const {
    LightSampling lights;
    // As a dome, for the cornea brings light to the iris from beyond its plane.
    lights.add({iris.position, iris.normal, Response::kDome}, path.sampler, walk.vertex);
    const auto& emitters = stage_.emitters();
    lights.sample_lights(emitters, path.light.asked, [&](std::size_t i, const WideLightSamples& samples, LaneBits) {
        const LightSample sample = samples.one(0, emitters[i]);
        const auto way = bent_way(eye, iris.position, sample.point);
        if (!way) return;
        const float cosine = glm::dot(way->inside, look.normal);
        if (!(cosine > 0.0F)) return;
        ++path.light.rays;
        const float passed = stage_.passes(shadow_ray(way->exit + kLeaveOff * way->normal, sample.point));
        // The light's area for this sample, square to the way; radiance grows by the index squared on the way in.
        constexpr auto kIndex = static_cast<float>(kCorneaIndex);
        const float area = sample.distance * sample.distance / sample.density;
        path.light.layers[i] +=
            walk.throughput * look.colour *
            (cosine / kPi * way->transmittance * kIndex * kIndex * way->spread * area * passed * sample.radiance);
    });
}

bool PathTracer::scatter_at_iris(Walk& walk, const Eye& eye, const IrisHit& iris, const IrisLook& look,
                                 Path& path) const {
    if (iris.on_iris && iris.radius < static_cast<float>(eye.pupil_radius_m)) return false;
    light_iris(walk, eye, iris, look, path);

    // What surfaces send reaches the iris by straight ways: it comes from all around, and bending it changes little.
    const Vec4 scatter = path.sampler.group(dimension_of_scatter(walk.vertex));
    const WayFromReceiver way = choose_way_from(stage_, {iris.position, look.normal, Response::kFlat}, scatter);
    const auto out = leave_through_cornea(eye, iris.position, way.direction);
    if (!out || !(way.weight > 0.0F)) return false;
    walk.throughput *= look.colour * (way.weight / kPi * out->transmittance);
    if (!survives(walk, scatter.w)) return false;
    walk.ray = {out->position + kLeaveOff * out->normal, way.direction};
    walk.arrival = Arrival::kCounted;
    ++walk.vertex;
    return true;
}

}  // namespace understudy
