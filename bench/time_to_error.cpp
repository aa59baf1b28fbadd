// How long a picture takes to come as near to a long render as is asked for: as it is traced, with paths where the
// noise is, through the filter that needs no weights, and through the trained network. On skin and on hair, each
// filling the picture.

#include <cmath>
#include <ctime>
#include <functional>
#include <optional>

#include <fmt/format.h>

#include "denoise/denoiser.h"
#include "references.h"
#include "setup/read_setup.h"
#include "transport/render.h"

namespace understudy {

namespace {

constexpr int kReferenceSamples = 4096;
constexpr int kMostSamples = 512;

struct Way {
    const char* name;
    bool by_noise;
    std::function<Picture(const Film&)> finish;
};

struct Reached {
    double seconds;
    double error;
};

Rehearsal filled_by(const std::string& sitter) {
    const std::string scene =
        "[picture]\nwidth = 160\nheight = 200\n[camera]\ndistance = 1.5\nfocal_length = 200\n[sitter]\n" + sitter +
        "\n[[light]]\nangle = -40\nheight = 1.7\ndistance = 1.2\nmeter = 8\nmodifier = \"octa-95\"\n"
        "[[light]]\nname = \"fill\"\nangle = 10\nheight = 1.4\ndistance = 2\nmeter = 4\nmodifier = \"octa-150\"\n";
    auto setup = parse_setup(scene, "bench.toml", own_library());
    if (!setup) fail_bench(setup.problems());
    auto rehearsal = rehearse(*setup);
    if (!rehearsal) fail_bench(rehearsal.problems());
    return std::move(*rehearsal);
}

// Between two renders the error falls as a power of the time.
std::optional<double> time_to(double error, const std::vector<Reached>& steps) {
    if (steps.front().error <= error) return steps.front().seconds;
    for (std::size_t i = 1; i < steps.size(); ++i) {
        const Reached& before = steps[i - 1];
        const Reached& after = steps[i];
        if (after.error > error) continue;
        const double part = std::log(before.error / error) / std::log(before.error / after.error);
        return before.seconds * std::pow(after.seconds / before.seconds, part);
    }
    return std::nullopt;
}

std::vector<Reached> steps_of(const Rehearsal& rehearsal, const Developing& developing, const Picture& wanted,
                              const Way& way) {
    std::vector<Reached> steps;
    for (int samples = 2; samples <= kMostSamples; samples *= 2) {
        RenderOptions options;
        options.samples = samples;
        if (way.by_noise) options.weights = layer_gains(developing);
        // Of the processor, so that whatever else the machine does counts little.
        const std::clock_t start = std::clock();
        const Picture picture = way.finish(render_film(rehearsal.studio, *rehearsal.stage, options).film);
        const double seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
        steps.push_back({seconds, squared_error(picture, wanted)});
        if (steps.back().error < 0.003 && steps.size() > 1) break;
    }
    return steps;
}

void measure(const std::string& what, const std::string& sitter, double wanted_share) {
    Rehearsal rehearsal = filled_by(sitter);
    const FilmCard card = bench_card(rehearsal);
    const Developing developing = developing_of(card);
    const Picture wanted =
        develop(reference_of("time-to-error-" + what, rehearsal, card, kReferenceSamples), developing);
    const auto learned = Denoiser::open(UNDERSTUDY_DENOISER_FILE);
    const auto filter = Denoiser::open("");
    if (!learned || !learned->is_learned() || !filter) {
        fmt::print(stderr, "time-to-error: no trained weights; run sh assets/fetch_denoiser.sh build\n");
        std::exit(1);
    }
    const auto as_traced = [&](const Film& film) { return develop(film, developing); };
    const auto by_network = [&](const Film& film) { return learned->clean(film, developing); };
    const std::vector<Way> ways{{"traced", false, as_traced},
                                {"by noise", true, as_traced},
                                {"filter", false, [&](const Film& film) { return filter->clean(film, developing); }},
                                {"network", false, by_network},
                                {"network, by noise", true, by_network}};
    std::vector<Reached> plain;
    for (const Way& way : ways) {
        const std::vector<Reached> steps = steps_of(rehearsal, developing, wanted, way);
        if (plain.empty()) plain = steps;
        for (const double error : {0.01, 0.003}) {
            const auto before = time_to(error, plain);
            const auto now = time_to(error, steps);
            fmt::print(
                "time-to-error: {}, {}: squared error {} after {} of processor time, {} of the time as traced (wanted "
                "{:.2f})\n",
                what, way.name, error,
                now ? fmt::format("{:.2f} s", *now) : fmt::format("more than {} samples", kMostSamples),
                before && now ? fmt::format("{:.2f}", *now / *before) : "-", wanted_share);
        }
    }
}

}  // namespace

void bench_time_to_error() {
    measure("skin", "hair = \"none\"\nbeard = \"none\"", 1.0 / 4.0);
    measure("hair", "head = \"aspen\"\nturn = 80\nhair = { style = \"long\", colour = \"blond\" }", 1.0 / 3.0);
}

}  // namespace understudy
