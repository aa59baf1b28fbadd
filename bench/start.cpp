// From a scene file's name to the first traced pixels, and to the first clean picture on the disk.

#include <filesystem>

#include <fmt/format.h>

#include "bench.h"
#include "cli/finish.h"
#include "cli/preview.h"
#include "references.h"
#include "transport/render.h"

namespace understudy {

namespace {

// As render --preview does it.
void write_first_look(const std::filesystem::path& path) {
    Rehearsal rehearsal = bench_scene("three-to-one", 640, 800);
    const auto finisher = Finisher::open(false);
    if (!finisher) fail_bench(finisher.problems());
    Preview preview(path, bench_card(rehearsal), *finisher, {});
    const Film look = first_look(rehearsal.studio, *rehearsal.stage, {}).film;
    if (!preview.first_look(look, kFirstLookEvery, 640, 800)) fail_bench(preview.problems());
}

}  // namespace

void bench_start() {
    const double to_tile = shortest_time(3, [] {
        const Rehearsal rehearsal = bench_scene("three-to-one", 16, 16);
        traced(rehearsal, 1);
    });
    fmt::print("start: {:.2f} s from the scene file to the first tile, head prepared (wanted under 1)\n", to_tile);
    const auto path = std::filesystem::temp_directory_path() / "understudy-first-look.png";
    const double to_picture = shortest_time(3, [&] { write_first_look(path); });
    std::filesystem::remove(path);
    const Rehearsal rehearsal = bench_scene("three-to-one", 640, 800);
    const double one_path = shortest_time(3, [&] { traced(rehearsal, 1); });
    fmt::print(
        "start: {:.2f} s from the scene file to the first clean picture of 640 x 800, {:.2f} times one path a pixel "
        "(wanted 1.5)\n",
        to_picture, to_picture / one_path);
}

}  // namespace understudy
