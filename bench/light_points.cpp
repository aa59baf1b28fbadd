// How well points of a light are chosen: the noise of one point's light on a matt receiver that nothing shades, by how
// far it is turned away, and what points cost, which are chosen sixteen at a time.

#include <fmt/format.h>

#include "bench.h"
#include "transport/light_sample.h"

namespace understudy {

namespace {

constexpr int kPoints = 16384;

struct LightNoise {
    double spread2 = 0.0;      // of one point's light, over the mean squared
    double nanoseconds = 0.0;  // for sixteen: one takes as long
};

LightNoise noise_at(const Emitter& emitter, const Receiver& receiver) {
    double sum = 0.0;
    double squares = 0.0;
    const double seconds = shortest_time(3, [&] {
        sum = squares = 0.0;
        for (std::uint32_t i = 0; i < kPoints; ++i) {
            const Vec4 u = Sampler(1, i, 0).group(0);  // each a pixel's first: independent of the others
            const auto sample = sample_light(emitter, receiver, Vec2(u.x, u.y));
            if (!sample) continue;
            const float cosine = std::max(0.0F, glm::dot(receiver.normal, sample->direction));
            const auto light = static_cast<double>(sample->radiance * cosine / sample->density);
            sum += light;
            squares += light * light;
        }
    });
    return {kPoints * squares / (sum * sum) - 1.0, 1e9 * seconds / kPoints};
}

}  // namespace

void bench_light_points() {
    const Rehearsal rehearsal = bench_scene("three-to-one", 160, 200);
    const Vec3 cheek(0.0F, 1.2F, 0.1F);
    const auto& lights = rehearsal.studio.setup.lights;
    for (std::size_t i = 0; i < lights.size(); ++i) {
        const Emitter& emitter = rehearsal.stage->emitters()[i];
        const Vec3 toward = glm::normalize(emitter.point_at(Vec2(0.5F), cheek).position - cheek);
        const Vec3 aside = glm::normalize(glm::cross(toward, Vec3(0.0F, 1.0F, 0.0F)));
        for (const double degrees : {0.0, 40.0, 70.0, 85.0}) {
            const auto turn = static_cast<float>(radians(degrees));
            const Receiver receiver{cheek, std::cos(turn) * toward + std::sin(turn) * aside, Response::kFlat};
            const LightNoise noise = noise_at(emitter, receiver);
            fmt::print(
                "light-points: {:4} turned {:2.0f} degrees: squared spread of a point's light {:.4f}, {:.0f} ns for "
                "sixteen\n",
                lights[i].name, degrees, noise.spread2, noise.nanoseconds);
        }
    }
}

}  // namespace understudy
