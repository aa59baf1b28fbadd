// How much of the bare ray rate the whole path tracer keeps.

#include <fmt/format.h>
#include <tbb/global_control.h>

#include "bench.h"
#include "transport/render.h"

namespace understudy {

namespace {

void bench_rays_of(const std::string& scene) {
    Rehearsal rehearsal = bench_scene(scene, 320, 400);
    if (!rehearsal.stage->sitter_mesh()) return;
    RenderOptions options;
    options.samples = 4;
    options.threads = 1;
    Stage::RayLog log;
    rehearsal.stage->log_rays(&log);
    render_film(rehearsal.studio, *rehearsal.stage, options);
    rehearsal.stage->log_rays(nullptr);
    const auto rays = static_cast<double>(log.nearest.size() + log.shadow.size());

    const MeshTree& mesh = *rehearsal.stage->sitter_mesh();
    double sink = 0.0;
    const double bare = shortest_time(3, [&] {
        for (const Ray& ray : log.nearest) sink += mesh.distance(ray) < kInfinity ? 1.0 : 0.0;
        for (const Ray& ray : log.shadow) sink += mesh.blocks(ray) ? 1.0 : 0.0;
    });
    const double whole = shortest_time(3, [&] { render_film(rehearsal.studio, *rehearsal.stage, options); });
    fmt::print("rays: {:14} {:.2f} M rays/s in the path tracer, {:.2f} M rays/s bare: ratio {:.2f} (wanted 0.50)\n",
               scene, rays / whole * 1e-6, rays / bare * 1e-6, bare / whole);
    if (sink < 0.0) fmt::print("{}", sink);  // keeps the queries from being optimised away
}

}  // namespace

void bench_rays() {
    const tbb::global_control one(tbb::global_control::max_allowed_parallelism, 1);
    for (const std::string& scene : bench_scene_names()) bench_rays_of(scene);
}

}  // namespace understudy
