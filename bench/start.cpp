// From a scene file's name to the first traced pixels.

#include <filesystem>

#include <fmt/format.h>

#include "bench.h"
#include "transport/render.h"

namespace understudy {

void bench_start() {
    const double seconds = shortest_time(3, [] {
        const Rehearsal rehearsal = bench_scene("three-to-one", 16, 16);
        RenderOptions options;
        options.samples = 1;
        render_film(rehearsal.studio, *rehearsal.stage, options);
    });
    fmt::print("start: {:.2f} s from the scene file to the first tile, head prepared (wanted under 1)\n", seconds);
}

}  // namespace understudy
