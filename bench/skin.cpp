// What it costs to follow light under the skin: beside skin that scatters at its surface, and beside a walk that is
// neither guided nor spared any rays.

#include <fmt/format.h>

#include "bench.h"
#include "transport/camera_path.h"
#include "transport/path_tracer.h"

namespace understudy {

namespace {

constexpr int kWidth = 80;
constexpr int kHeight = 100;
constexpr int kSamples = 32;

struct Outcome {
    double seconds = 0.0;
    double variance = 0.0;  // of one path about its pixel's mean, over that mean squared; a mean over pixels
    double rays = 0.0;      // a path
    double given_up = 0.0;  // walks, of the paths
};

// The pixels with nothing but skin in them.
std::vector<PixelSample> skin_samples(const Rehearsal& rehearsal, const Camera& camera) {
    std::vector<PixelSample> samples;
    for (int y = 0; y < kHeight; ++y) {
        for (int x = 0; x < kWidth; ++x) {
            bool skin = true;
            for (int corner = 0; corner < 4 && skin; ++corner) {
                const Vec2 place(static_cast<float>(x + 2 * (corner & 1)) - 0.5F,
                                 static_cast<float>(y + 2 * (corner >> 1)) - 0.5F);
                const auto hit = rehearsal.stage->intersect(camera.ray(place, {0.5F, 0.5F}));
                skin = hit && hit->surface != nullptr && is_skin(*hit->surface);
            }
            for (int sample = 0; skin && sample < kSamples; ++sample) samples.push_back({x, y, sample});
        }
    }
    return samples;
}

float brought(const Path& path, std::size_t layers) {
    float sum = 0.0F;
    for (std::size_t l = 0; l < layers; ++l) {
        const Light4& light = path.light.layers[l];
        sum += 0.25F * (light.x + light.y + light.z + light.w);
    }
    return sum;
}

Outcome measure(const Stage& stage, const Camera& camera, const std::vector<PixelSample>& samples,
                const WalkTuning& tuning) {
    const PathTracer tracer(stage, tuning);
    constexpr std::size_t kInStep = 256;
    Outcome outcome;
    std::vector<float> values;
    outcome.seconds = shortest_time(2, [&] {
        values.clear();
        outcome.rays = outcome.given_up = 0.0;
        for (std::size_t first = 0; first < samples.size(); first += kInStep) {
            const auto some = std::span(samples).subspan(first, std::min(kInStep, samples.size() - first));
            std::vector<Path> paths = camera_paths(camera, 0, kWidth, some);
            tracer.look(paths);
            for (const Path& path : paths) {
                values.push_back(brought(path, stage.layer_count()));
                outcome.rays += path.light.rays / static_cast<double>(samples.size());
                outcome.given_up += path.light.given_up / static_cast<double>(samples.size());
            }
        }
    });
    double pixels = 0.0;
    double overall = 0.0;
    for (const float value : values) overall += static_cast<double>(value) / static_cast<double>(values.size());
    for (std::size_t first = 0; first < values.size(); first += kSamples) {
        double sum = 0.0;
        double squares = 0.0;
        for (std::size_t i = first; i < first + kSamples; ++i) {
            sum += static_cast<double>(values[i]) / kSamples;
            squares += static_cast<double>(values[i]) * static_cast<double>(values[i]) / kSamples;
        }
        if (sum < 0.05 * overall) continue;  // in the dark
        outcome.variance += (squares - sum * sum) / (sum * sum);
        pixels += 1.0;
    }
    outcome.variance /= pixels;
    return outcome;
}

void bench_skin_of(const std::string& scene) {
    Rehearsal deep = bench_scene(scene, kWidth, kHeight);
    const Camera camera(deep.studio);
    const auto samples = skin_samples(deep, camera);
    if (samples.empty()) return;
    Studio& studio = deep.studio;
    studio.setup.picture.skin = SkinLight::kAtSurface;
    const Stage flat_stage(studio, Stage::With::kSitter);
    const Outcome flat = measure(flat_stage, camera, samples, {});
    const Outcome guided = measure(*deep.stage, camera, samples, {});
    const Outcome plain = measure(*deep.stage, camera, samples, {0.0F, false, false});
    const auto paths = static_cast<double>(samples.size());
    fmt::print(
        "skin: {:14} {:.2f} us a path at the surface, {:.2f} under the skin: {:.2f} times (wanted under 3); "
        "{:.1f} and {:.1f} rays\n",
        scene, 1e6 * flat.seconds / paths, 1e6 * guided.seconds / paths, guided.seconds / flat.seconds, flat.rays,
        guided.rays);
    fmt::print(
        "skin: {:14} to equal error {:.2f} of the plain walk's time (wanted under 0.33): {:.2f} of its time at "
        "{:.2f} of its variance; {:.1f} rays for {:.1f}; {:.4f} % of the walks given up, {:.4f} %\n",
        "", guided.seconds * guided.variance / (plain.seconds * plain.variance), guided.seconds / plain.seconds,
        guided.variance / plain.variance, guided.rays, plain.rays, 100.0 * guided.given_up, 100.0 * plain.given_up);
}

}  // namespace

void bench_skin() {
    for (const char* scene : {"three-to-one", "side-strip"}) bench_skin_of(scene);
}

}  // namespace understudy
