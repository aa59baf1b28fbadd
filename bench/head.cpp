// A head with its hair: made for the first time, and from what is kept of it.

#include <filesystem>

#include <fmt/format.h>

#include "bench.h"
#include "setup/read_setup.h"
#include "sitter/hair/kept_strands.h"
#include "sitter/head.h"
#include "stage/strand_grid.h"

namespace understudy {

namespace {

Sitter made_head(const SitterSettings& settings, const StrandDetail& detail, const Library& library) {
    Sitter sitter = pose_head(*load_head(settings, library).value(), settings, std::nullopt);
    sitter.strands = kept_strands(sitter, detail, library.kept());
    return sitter;
}

void bench_hair(const SitterSettings& settings, const char* name, const StrandDetail& detail) {
    Library library = own_library();
    library.cache = std::filesystem::temp_directory_path() / "understudy-bench-kept";
    const double cold = shortest_time(2, [&] {
        std::filesystem::remove_all(library.cache);
        made_head(settings, detail, library);
    });
    const double kept = shortest_time(3, [&] { made_head(settings, detail, library); });
    const Sitter sitter = made_head(settings, detail, library);
    const double grid = shortest_time(3, [&] { StrandGrid(sitter.strands); });
    std::filesystem::remove_all(library.cache);
    fmt::print(
        "head: {:4} hair, {:8} {:6} hairs: {:.2f} s at first (with its grid wanted under 3), {:.2f} s when kept "
        "(wanted under 0.3), its grid {:.2f} s\n",
        name, detail.least_width_m > 0.0 ? "widened" : "true", sitter.strands.strands.size(), cold, kept, grid);
}

}  // namespace

void bench_head() {
    const auto setup = read_setup(std::filesystem::path(UNDERSTUDY_SCENES_DIR) / "three-to-one.toml", own_library());
    SitterSettings settings = setup.value().sitter;
    for (const auto& [name, style] : {std::pair("long", HairStyle::kLong), std::pair("afro", HairStyle::kAfro)}) {
        settings.hair.style = style;
        for (const double width : {kWidenedHair, 0.0}) bench_hair(settings, name, {width});
    }
}

}  // namespace understudy
