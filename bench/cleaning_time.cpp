// How long cleaning a picture of noise takes, by the trained network and by the filter that needs none.

#include <fmt/format.h>

#include "bench.h"
#include "denoise/denoiser.h"
#include "references.h"

namespace understudy {

namespace {

void bench_denoiser(const Denoiser& denoiser, const Film& film, const Developing& developing) {
    const double seconds = shortest_time(2, [&] { denoiser.clean(film, developing); });
    fmt::print("cleaning-time: {:8} {} x {}: {:.0f} ms, {:.2f} us a pixel\n",
               denoiser.is_learned() ? "network," : "filter,", film.width, film.height, seconds * 1e3,
               seconds * 1e6 / (film.width * film.height));
}

}  // namespace

void bench_cleaning_time() {
    const auto learned = Denoiser::open(UNDERSTUDY_DENOISER_FILE);
    const auto filter = Denoiser::open("");
    if (!learned) fail_bench(learned.problems());
    if (!filter) fail_bench(filter.problems());
    for (const auto& [width, height] : {std::pair(320, 400), std::pair(640, 800)}) {
        Rehearsal rehearsal = bench_scene("three-to-one", width, height);
        const Developing developing = developing_of(bench_card(rehearsal));
        const Film film = traced(rehearsal, kLeastSamples);
        bench_denoiser(*learned, film, developing);
        bench_denoiser(*filter, film, developing);
    }
}

}  // namespace understudy
