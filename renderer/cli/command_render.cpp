// understudy render SCENE [-o FILE] [--film FILE] [--json FILE] [--preview] [--until CHANGE] [--time SECONDS]

#include <filesystem>
#include <optional>

#include <fmt/format.h>

#include "cli/commands.h"
#include "cli/deliver.h"
#include "cli/interrupt.h"
#include "cli/own_library.h"
#include "cli/preview.h"
#include "cli/progress_line.h"
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
    bool preview = false;
    std::string until;
    std::string time;
    bool previews() const { return preview || !until.empty() || !time.empty(); }
};

constexpr int kMostSamples = 65536;

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

struct Traced {
    Rendered rendered;
    std::optional<Picture> shown;  // the preview that was written last, which is the picture
};

int write_all(const RenderWish& wish, const Traced& traced, const FilmCard& card, const MeterReport& report,
              const Finisher& finisher) {
    const Film& film = traced.rendered.film;
    if (traced.shown) {
        tell_picture(wish.picture, *traced.shown);
    } else if (const auto done = deliver_picture(wish.picture, film, card, finisher); !done) {
        return complain(done.problems());
    }
    if (!wish.film.empty()) {
        if (const auto done = write_film(wish.film, film, card_text(card)); !done) return complain(done.problems());
    }
    if (!wish.json.empty()) {
        if (const auto done = write_report_file(wish.json, report); !done) return complain(done.problems());
    }
    return kDone;
}

Problems read_goal(const RenderWish& wish, PreviewGoal& goal) {
    Problems problems;
    const auto take = [&](const auto& read, std::optional<double>& into) {
        if (read) {
            into = *read;
        } else {
            problems.insert(problems.end(), read.problems().begin(), read.problems().end());
        }
    };
    if (!wish.until.empty()) take(read_error(wish.until), goal.error);
    if (!wish.time.empty()) take(read_seconds(wish.time), goal.seconds);
    if (const auto kind = picture_kind(wish.picture); wish.previews() && kind && *kind == PictureKind::kExr) {
        problems.push_back({Blame::kWrongInput, fmt::format("{}: a preview is .png or .jpg", wish.picture)});
    }
    return problems;
}

// With a goal, as many paths as it takes; else as many as the scene or the wish says.
int most_samples(const RenderWish& wish, const PictureSettings& settings) {
    if (wish.samples > 0) return wish.samples;
    return wish.until.empty() && wish.time.empty() ? settings.samples : kMostSamples;
}

// Soon, and coarse: the first pass over all pixels takes seconds.
bool look_first(const Rehearsal& rehearsal, const RenderOptions& options, Preview& preview) {
    const Rendered look = first_look(rehearsal.studio, *rehearsal.stage, options);
    const PictureSettings& picture = rehearsal.studio.setup.picture;
    return look.cancelled || preview.first_look(look.film, kFirstLookEvery, picture.width, picture.height);
}

Expected<Traced> trace(const RenderWish& wish, const Rehearsal& rehearsal, const FilmCard& card,
                       const Finisher& finisher, const PreviewGoal& goal) {
    std::optional<Preview> preview;
    if (wish.previews()) preview.emplace(wish.picture, card, finisher, goal);
    ProgressLine line;
    const PictureSettings& settings = rehearsal.studio.setup.picture;
    RenderOptions options;
    options.samples = most_samples(wish, settings);
    options.seed = settings.seed;
    options.cancel = &interruption();
    options.weights = layer_gains(developing_of(card));
    if (preview && !look_first(rehearsal, options, *preview)) return preview->problems();
    if (preview) {
        options.after_pass = [&](const Film& film) {
            const int more = preview->after_pass(film);
            line.say(preview->state());
            return more;
        };
    } else {
        options.progress = [&](double share) { line.show(share); };
    }
    Traced traced{render_film(rehearsal.studio, *rehearsal.stage, options), {}};
    if (!preview) return traced;
    if (!preview->problems().empty()) return preview->problems();
    traced.shown = preview->picture();
    return traced;
}

// For a preview nothing has been metered yet.
Expected<FilmCard> card_before(Rehearsal& rehearsal, const RenderWish& wish, const MeteredRehearsal& metered) {
    if (!wish.previews()) return card_of(rehearsal.studio.setup, metered.lit, metered.report);
    const auto lit = light_rehearsal(rehearsal);
    if (!lit) return lit.problems();
    return quick_card(rehearsal, *lit);
}

void tell_losses(const Rendered& rendered) {
    if (rendered.non_finite > 0) {
        fmt::print(stderr, "{} paths came to no number and were left out of the picture\n", rendered.non_finite);
    }
    if (rendered.given_up > 0) {
        fmt::print(stderr, "{} paths of light under the skin were too long to follow and were left dark\n",
                   rendered.given_up);
    }
}

int run_render(RenderWish wish) {
    if (wish.picture.empty()) wish.picture = std::filesystem::path(wish.scene.file).stem().string() + ".png";
    PreviewGoal goal;
    if (const Problems problems = read_goal(wish, goal); !problems.empty()) return complain(problems);
    auto rehearsal = open_rehearsal(wish.scene);
    if (!rehearsal) return complain(rehearsal.problems());
    if (const Problems problems = problems_with_outputs(wish); !problems.empty()) return complain(problems);
    const auto finisher = Finisher::open(wish.as_traced);
    if (!finisher) return complain(finisher.problems());

    // The report first, so that what is wrong with the light is told before minutes of tracing; but a preview is to be
    // seen at once.
    auto metered = wish.previews() ? Expected<MeteredRehearsal>(MeteredRehearsal{}) : meter_rehearsal(*rehearsal);
    if (!metered) return complain(metered.problems());
    const auto card = card_before(*rehearsal, wish, *metered);
    if (!card) return complain(card.problems());
    const auto traced = trace(wish, *rehearsal, *card, *finisher, goal);
    if (!traced) return complain(traced.problems());
    if (traced->rendered.cancelled || interruption()) {
        return say_interrupted(wish.previews() ? "the picture stays as it was written last" : "no file was written");
    }
    tell_losses(traced->rendered);
    if (wish.previews()) metered = meter_rehearsal(*rehearsal);
    if (!metered) return complain(metered.problems());
    const FilmCard whole_card = card_of(rehearsal->studio.setup, metered->lit, metered->report);
    fmt::print("{}", report_text(metered->report));
    return write_all(wish, *traced, whole_card, metered->report, *finisher);
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
        ->check(CLI::Range(1, kMostSamples));
    command->add_flag("--preview", wish->preview,
                      "Write the picture as soon as there is one, and again whenever it has got better");
    command->add_option("--until", wish->until,
                        "A preview that stops when no more than this of it is noise: \"0.5 %\"");
    command->add_option("--time", wish->time, "A preview that stops after so much tracing: \"10 s\"");
    take_denoising(*command, wish->as_traced);
    command->callback([wish, &status] { status = run_render(*wish); });
}

}  // namespace understudy
