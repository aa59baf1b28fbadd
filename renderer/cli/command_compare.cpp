// understudy compare SCENE --vary KEY=VALUES [--vary …] [-o FILE] [--json FILE]: a labelled contact sheet.

#include <filesystem>
#include <memory>
#include <utility>

#include <fmt/format.h>

#include "cli/commands.h"
#include "cli/compare_cells.h"
#include "cli/compare_films.h"
#include "cli/compare_told.h"
#include "cli/finish.h"
#include "cli/interrupt.h"
#include "cli/own_library.h"
#include "cli/progress_line.h"
#include "cli/sheet_output.h"
#include "report/json_file.h"
#include "setup/vary_scene.h"

namespace understudy {

namespace {

struct CompareWish {
    ComparisonWish what;
    std::string sheet;
    std::string json;
    std::string exposure = "equal";
    int samples = 0;
    bool as_traced = false;
};

// All of them, so that whatever is wrong with one is told before anything is traced.
Expected<Done> meter_all(Comparison& comparison, ProgressLine& line, const std::atomic<bool>& interrupted) {
    tell_if_sitters_are_not_kept();
    Problems problems;
    for (std::size_t i = 0; i < comparison.cells.size() && !interrupted; ++i) {
        line.say(fmt::format("metering {} of {}", i + 1, comparison.cells.size()));
        auto metered = metered_cell(comparison.cells[i], comparison.exposure);
        if (metered) {
            comparison.cells[i] = std::move(*metered);
            continue;
        }
        const Problems told = told_with(metered.problems(), comparison.variations, comparison.cells[i].values);
        problems.insert(problems.end(), told.begin(), told.end());
    }
    if (!problems.empty()) return problems;
    return Done{};
}

Expected<Done> write_outputs(const CompareWish& wish, const Comparison& comparison,
                             const std::vector<CellPictures>& pictures) {
    const auto written = write_sheet(wish.sheet, sheet_of(comparison, pictures), comparison.cells.front().report.title);
    if (!written) return written.problems();
    if (!wish.json.empty()) {
        if (auto done = write_whole_file(wish.json, comparison_json(comparison)); !done) return done;
    }
    fmt::print("{}\n{}, {} picture{} from {} traced film{}\n", comparison_text(comparison), *written, pictures.size(),
               pictures.size() == 1 ? "" : "s", comparison.films, comparison.films == 1 ? "" : "s");
    return Done{};
}

int run_compare(CompareWish wish) {
    const std::atomic<bool>& interrupted = interruption();
    if (wish.sheet.empty()) wish.sheet = std::filesystem::path(wish.what.scene).stem().string() + "-sheet.png";
    wish.what.exposure = wish.exposure == "equal" ? ComparedExposure::kEqual : ComparedExposure::kLocked;
    auto comparison = read_comparison(wish.what);
    if (!comparison) return complain(comparison.problems());
    if (const Problems problems = problems_with_sheet(wish.sheet, wish.json); !problems.empty())
        return complain(problems);
    std::vector<CellPictures> pictures;
    {
        ProgressLine line;
        const auto metered = meter_all(*comparison, line, interrupted);
        if (interrupted) return say_interrupted();
        if (!metered) return complain(metered.problems());
        *comparison = with_films(std::move(*comparison));
        auto traced = trace_pictures(
            *comparison, {wish.samples, [&](double share) { line.show(share); }, &interrupted, wish.as_traced});
        if (!traced) return complain(traced.problems());
        if (!*traced || interrupted) return say_interrupted();
        pictures = std::move(**traced);
    }
    const auto done = write_outputs(wish, *comparison, pictures);
    return done ? kDone : complain(done.problems());
}

}  // namespace

void add_compare(CLI::App& program, int& status) {
    const auto wish = std::make_shared<CompareWish>();
    CLI::App* command = program.add_subcommand(
        "compare", "Pictures of a scene side by side, one or two things of it varied, with the meter's numbers");
    command->add_option("SCENE", wish->what.scene, "The scene file")->required();
    command
        ->add_option("--vary", wish->what.vary,
                     "What to vary, and its values: light.key.modifier=strip-30x120,octa-120 or a range, "
                     "light.key.distance=\"0.6 m..2 m/5\" (five values, even steps; *5 for even ratio). Given twice: a "
                     "grid, the first down, the second across")
        ->required()
        ->allow_extra_args(false)
        ->type_name("KEY=VALUES");
    command->add_option("-o,--output", wish->sheet, "The sheet: .png or .jpg (default: the scene's name -sheet.png)");
    command->add_option("--json", wish->json, "Write the numbers and each picture's whole report to this file as well");
    command
        ->add_option("--exposure", wish->exposure,
                     "equal (default): each picture exposed for what a flat meter at the face reads toward the key; "
                     "locked: as the scene sets the camera")
        ->check(CLI::IsMember({"equal", "locked"}));
    command->add_option("--samples", wish->samples, "Camera paths a pixel, in place of the scene's own")
        ->check(CLI::Range(1, 65536));
    take_denoising(*command, wish->as_traced);
    command->callback([wish, &status] { status = run_compare(*wish); });
}

}  // namespace understudy
