// understudy render SCENE [-o FILE] [--film FILE] [--json FILE]

#include <filesystem>

#include <fmt/format.h>

#include "cli/commands.h"
#include "cli/deliver.h"
#include "cli/interrupt.h"
#include "cli/progress_line.h"
#include "cli/rehearsal.h"
#include "report/json_file.h"
#include "report/report_text.h"
#include "transport/render.h"

namespace understudy {

namespace {

struct RenderWish {
    SceneWish scene;
    std::string picture;
    std::string film;
    std::string json;
    int samples = 0;
    bool as_traced = false;
};

// Nobody wants to learn after minutes of tracing that the file cannot be written.
Problems problems_with_outputs(const RenderWish& wish) {
    Problems problems;
    const auto keep = [&](const auto& outcome) {
        if (!outcome) problems.insert(problems.end(), outcome.problems().begin(), outcome.problems().end());
    };
    keep(picture_kind(wish.picture));
    for (const std::string& path : {wish.picture, wish.film, wish.json}) {
        if (!path.empty()) keep(check_writable(path));
    }
    return problems;
}

int run_render(RenderWish wish) {
    if (wish.picture.empty()) wish.picture = std::filesystem::path(wish.scene.file).stem().string() + ".png";
    auto rehearsal = open_rehearsal(wish.scene);
    if (!rehearsal) return complain(rehearsal.problems());
    if (const Problems problems = problems_with_outputs(wish); !problems.empty()) return complain(problems);
    const auto finisher = Finisher::open(wish.as_traced);
    if (!finisher) return complain(finisher.problems());
    const std::atomic<bool>& interrupted = interruption();

    const auto metered = meter_rehearsal(*rehearsal);
    if (!metered) return complain(metered.problems());
    const PictureSettings& settings = rehearsal->studio.setup.picture;
    Rendered rendered;
    {
        ProgressLine line;
        RenderOptions options;
        options.samples = wish.samples > 0 ? wish.samples : settings.samples;
        options.seed = settings.seed;
        options.progress = [&](double share) { line.show(share); };
        options.cancel = &interrupted;
        rendered = render_film(rehearsal->studio, *rehearsal->stage, options);
    }
    if (rendered.cancelled || interrupted) {
        fmt::print(stderr, "interrupted: no file was written\n");
        return kInterrupted;
    }
    if (rendered.non_finite > 0) {
        fmt::print(stderr, "{} paths came to no number and were left out of the picture\n", rendered.non_finite);
    }
    if (rendered.given_up > 0) {
        fmt::print(stderr, "{} walks under the skin grew too long and were given up\n", rendered.given_up);
    }
    const FilmCard card = card_of(rehearsal->studio.setup, metered->lit, metered->report);
    fmt::print("{}", report_text(metered->report));
    if (const auto done = deliver_picture(wish.picture, rendered.film, card, *finisher); !done)
        return complain(done.problems());
    if (!wish.film.empty()) {
        if (const auto done = write_film(wish.film, rendered.film, card_text(card)); !done)
            return complain(done.problems());
    }
    if (!wish.json.empty()) {
        if (const auto done = write_report_file(wish.json, metered->report); !done) return complain(done.problems());
    }
    return kDone;
}

}  // namespace

void add_render(CLI::App& program, int& status) {
    const auto wish = std::make_shared<RenderWish>();
    CLI::App* command = program.add_subcommand("render", "Trace a picture of a scene and print its report");
    take_scene(*command, wish->scene);
    command->add_option("-o,--output", wish->picture,
                        "The picture: .png, .jpg or .exr (default: the scene's name .png)");
    command->add_option("--film", wish->film, "Keep the film as well (.exr), to develop it differently later");
    command->add_option("--json", wish->json, "Write the report to this file as well");
    command->add_option("--samples", wish->samples, "Camera paths a pixel, in place of the scene's own")
        ->check(CLI::Range(1, 65536));
    take_denoising(*command, wish->as_traced);
    command->callback([wish, &status] { status = run_render(*wish); });
}

}  // namespace understudy
