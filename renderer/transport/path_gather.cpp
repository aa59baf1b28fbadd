// Paths that start at a receptor instead of a camera.
#include <algorithm>

#include "kit/square_maps.h"
#include "transport/dimensions.h"
#include "transport/light_sample.h"
#include "transport/path_tracer.h"
#include "transport/receiver_way.h"

namespace understudy {

namespace {

// Somewhere on the disc that the reading is averaged over.
Vec3 place_of(const Gathering& place, const Frame& frame, const Sampler& sampler) {
    if (!(place.radius > 0.0F)) return place.position;
    const Vec4 numbers = sampler.group(kFilmAndLens);
    const DiscVector<float> disc = square_to_disc_vector(numbers.x, numbers.y);
    return place.position + place.radius * disc.radius * (disc.x * frame.tangent + disc.y * frame.bitangent);
}

}  // namespace

void PathTracer::gather(const Gathering& place, const Waves& waves, const Sampler& sampler, PathLight& light) const {
    Path path{sampler, waves, {}, light};
    gather(place, std::span(&path, 1));
    light = path.light;
}

void PathTracer::gather(const Gathering& place, std::span<Path> paths) const {
    Group group{paths};
    for_lanes(paths.size(), [&](std::size_t first, std::size_t count) { gather_first(group, place, first, count); });
    follow(group);
}

void PathTracer::gather_first(Group& group, const Gathering& place, std::size_t first, std::size_t count) const {
    const Frame frame = Frame::around(place.normal);
    const auto paths = group.paths.subspan(first, count);
    std::vector<Vec3> positions;
    LightSampling lights;
    for (const Path& path : paths) {
        positions.push_back(place_of(place, frame, path.sampler));
        lights.add({positions.back(), place.normal, place.response}, path.sampler, 0);
    }
    const auto start = [&](std::size_t i, const Vec3& direction) -> std::optional<Vec3> {
        if (place.behind_cornea == nullptr) return positions[i];
        const auto out = leave_through_cornea(*place.behind_cornea, positions[i], direction);
        if (!out) return std::nullopt;
        return out->position + kLeaveOff * out->normal;
    };
    const auto& emitters = stage_.emitters();
    lights.sample_lights(emitters, group.asked(), [&](std::size_t i, const WideLightSamples& samples, LaneBits lit) {
        std::array<float, kLanes> brought;
        WideRays rays;
        LaneBits asked = 0;
        for_each_lane(lit, [&](std::size_t lane) {
            const LightSample sample = samples.one(lane, emitters[i]);
            const auto from = start(lane, sample.direction);
            if (!from) return;
            asked |= 1U << lane;
            rays.set(lane, sample.shadow_ray(*from));
            const float response = response_to(place.response, glm::dot(sample.direction, place.normal));
            brought[lane] = response * sample.radiance / sample.density;
        });
        const Wide passed = stage_.passed(rays, asked);
        for_each_lane(asked, [&](std::size_t lane) {
            ++paths[lane].light.rays;
            paths[lane].light.layers[i] += Light4(brought[lane] * passed[lane]);
        });
    });

    for (std::size_t i = 0; i < count; ++i) {
        const Receiver receiver{positions[i], place.normal, place.response};
        const WayFromReceiver way = choose_way_from(stage_, receiver, paths[i].sampler.group(dimension_of_scatter(0)));
        const auto from = start(i, way.direction);
        if (!from || !(way.weight > 0.0F)) continue;
        Walk walk;
        walk.ray = {*from, way.direction};
        walk.throughput = Light4(way.weight);
        walk.arrival = Arrival::kCounted;
        walk.vertex = 1;
        walk.may_split = false;
        walk.path = static_cast<std::uint32_t>(first + i);
        group.start(walk);
    }
}

}  // namespace understudy
