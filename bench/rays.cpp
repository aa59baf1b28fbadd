// How much of the bare ray rate the whole path tracer keeps, on a plain head: no hair, and skin lit at its surface, for
// walks under the skin and questions among hairs ask other things than the mesh.

#include <fmt/format.h>
#include <tbb/global_control.h>

#include "bench.h"
#include "transport/render.h"

namespace understudy {

namespace {

void bench_rays_of(const std::string& scene) {
    Rehearsal rehearsal = bench_scene(scene, 320, 400);
    Studio& studio = rehearsal.studio;
    if (studio.sitter.mesh.triangles.empty()) return;
    studio.setup.picture.skin = SkinLight::kAtSurface;
    studio.sitter.strands = {};
    Stage stage(studio, Stage::With::kSitter);
    RenderOptions options;
    options.samples = 4;
    options.threads = 1;
    Stage::RayLog log;
    stage.log_rays(&log);
    render_film(studio, stage, options);
    stage.log_rays(nullptr);
    const auto rays = static_cast<double>(log.nearest.size() + log.shadow.size());

    const MeshTree& mesh = *stage.sitter_mesh();
    double sink = 0.0;
    const double bare = shortest_time(3, [&] {
        for (const Ray& ray : log.nearest) sink += mesh.distance(ray) < kInfinity ? 1.0 : 0.0;
        for (const Ray& ray : log.shadow) sink += mesh.blocks(ray) ? 1.0 : 0.0;
    });
    const double whole = shortest_time(3, [&] { render_film(studio, stage, options); });
    fmt::print("rays: {:14} {:.2f} M rays/s in the path tracer, {:.2f} M rays/s bare: ratio {:.2f} (wanted 0.65)\n",
               scene, rays / whole * 1e-6, rays / bare * 1e-6, bare / whole);
    if (sink < 0.0) fmt::print("{}", sink);  // keeps the queries from being optimised away
}

}  // namespace

void bench_rays() {
    const tbb::global_control one(tbb::global_control::max_allowed_parallelism, 1);
    for (const std::string& scene : bench_scene_names()) bench_rays_of(scene);
}

}  // namespace understudy
