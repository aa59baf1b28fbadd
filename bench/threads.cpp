// What a second thread brings.

#include <fmt/format.h>

#include "bench.h"
#include "transport/render.h"

namespace understudy {

void bench_threads() {
    const Rehearsal rehearsal = bench_scene("three-to-one", 320, 400);
    const auto time = [&](int threads) {
        return shortest_time(3, [&] {
            RenderOptions options;
            options.samples = 16;
            options.threads = threads;
            render_film(rehearsal.studio, *rehearsal.stage, options);
        });
    };
    const double one = time(1);
    const double two = time(2);
    fmt::print("threads: two over one {:.2f} (wanted 1.80)\n", one / two);
}

}  // namespace understudy
