#include "cli/compare_films.h"

#include <algorithm>

#include <fmt/format.h>

#include "cli/finish.h"
#include "cli/own_library.h"
#include "sitter/pupil.h"
#include "stage/close_up.h"
#include "transport/render.h"

namespace understudy {

namespace {

// A field that holds an eye with its lids and the brow's shadow: 24 mm of eyeball, 30 mm between the lids' corners.
constexpr double kEyeField = 0.042;
constexpr int kBetweenEyes = 6;  // pixels; the sheet sets insets no wider than the picture
constexpr int kNarrowest = 16;

// Films of the picture and of each eye.
struct Traced {
    std::vector<Film> films;
    bool cancelled = false;
};

CloseUp eye_view(const Setup& setup) {
    const int width = std::max(kNarrowest, (setup.picture.width - kBetweenEyes) / 2);
    return {width, std::max(kNarrowest, width * 3 / 4), kEyeField};
}

Traced trace(const Rehearsal& rehearsal, const TraceWish& wish, const std::function<void(double)>& progress) {
    const Studio& studio = rehearsal.studio;
    std::vector<Studio> views{studio};
    for (std::size_t eye = 0; eye < rehearsal.stage->eyes().size(); ++eye) {
        views.push_back(close_up_of_eye(studio, eye, eye_view(studio.setup)));
    }
    const auto pixels = [](const Studio& view) {
        return static_cast<double>(view.setup.picture.width) * view.setup.picture.height;
    };
    double all = 0.0;
    for (const Studio& view : views) all += pixels(view);
    Traced traced;
    double done = 0.0;
    for (const Studio& view : views) {
        RenderOptions options;
        options.samples = wish.samples > 0 ? wish.samples : studio.setup.picture.samples;
        options.seed = studio.setup.picture.seed;
        options.progress = [&](double share) { progress((done + share * pixels(view)) / all); };
        options.cancel = wish.cancel;
        Rendered rendered = render_film(view, *rehearsal.stage, options);
        if (rendered.cancelled) return {{}, true};
        if (rendered.non_finite > 0) {
            fmt::print(stderr, "{} paths came to no number and were left out of a picture\n", rendered.non_finite);
        }
        traced.films.push_back(std::move(rendered.film));
        done += pixels(view);
    }
    return traced;
}

CellPictures developed(const std::vector<Film>& films, const ComparedCell& cell, const Finisher& finisher) {
    Developing developing = developing_of(cell.card);
    developing.aperture = cell.developed_f_number;
    CellPictures pictures;
    pictures.picture = display_picture(finisher.finish(films.front(), developing));
    for (std::size_t i = 1; i < films.size(); ++i) {
        pictures.eyes.push_back(display_picture(finisher.finish(films[i], developing)));
    }
    return pictures;
}

}  // namespace

Expected<std::optional<std::vector<CellPictures>>> trace_pictures(const Comparison& comparison, const TraceWish& wish) {
    const auto finisher = Finisher::open(wish.as_traced);
    if (!finisher) return finisher.problems();
    std::vector<CellPictures> pictures(comparison.cells.size());
    for (std::size_t film = 0; film < comparison.films; ++film) {
        const auto shares_it = [&](const ComparedCell& cell) { return cell.film == film; };
        const auto first = std::find_if(comparison.cells.begin(), comparison.cells.end(), shares_it);
        auto rehearsal = rehearse(first->setup);
        if (!rehearsal) return rehearsal.problems();
        if (first->report.pupil) {
            const double seen_m = 1e-3 * first->report.pupil->diameter_mm;
            rehearsal->stage->set_pupil_radius(pupil_radius_behind_cornea_m(seen_m));
        }
        const Traced traced = trace(*rehearsal, wish, [&](double share) {
            wish.progress((static_cast<double>(film) + share) / static_cast<double>(comparison.films));
        });
        if (traced.cancelled || *wish.cancel) return std::optional<std::vector<CellPictures>>();
        for (std::size_t i = 0; i < comparison.cells.size(); ++i) {
            if (shares_it(comparison.cells[i])) pictures[i] = developed(traced.films, comparison.cells[i], *finisher);
        }
    }
    return std::optional(std::move(pictures));
}

}  // namespace understudy
