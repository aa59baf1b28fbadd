// What a modifier costs beside a plain, even rectangle as wide and as high: the same portrait with each of them as its
// only light. (A larger light has wider penumbras, which are noisy by themselves.)
//
// Noise: the spread of a pixel over renders with other numbers, over the picture's mean, both rms over the picture. At
// equal time it is the spread at equal samples times the root of the time.

#include <cmath>

#include <fmt/format.h>
#include <tbb/global_control.h>

#include "bench.h"
#include "setup/kit_files.h"
#include "setup/kit_modifier.h"
#include "setup/read_setup.h"
#include "transport/render.h"

namespace understudy {

namespace {

constexpr int kSamples = 4;
constexpr unsigned kRuns = 4;

struct Cost {
    double seconds = 0.0;
    double noise = 0.0;  // relative, at equal samples
};

Rehearsal portrait_by(const std::string& modifier) {
    const std::string scene =
        "[picture]\nwidth = 96\nheight = 120\n[[light]]\nangle = -35\nheight = 1.6\ndistance = 1.3\nmeter = 4\n"
        "modifier = " +
        modifier + "\n";
    const auto setup = parse_setup(scene, "bench.toml", own_library());
    if (setup) {
        if (auto studio = place_studio(*setup, own_library())) {
            Rehearsal rehearsal;
            rehearsal.studio = std::move(*studio);
            rehearsal.stage = std::make_unique<Stage>(rehearsal.studio, Stage::With::kSitter);
            return rehearsal;
        }
    }
    fmt::print(stderr, "the modifier {} cannot be lit; run understudy check on a scene with it\n", modifier);
    std::exit(1);
}

Cost cost_of(const std::string& modifier) {
    const Rehearsal rehearsal = portrait_by(modifier);
    RenderOptions options;
    options.samples = kSamples;
    options.threads = 1;
    std::vector<std::vector<double>> pictures;
    Cost cost;
    cost.seconds = 1e30;
    for (unsigned seed = 0; seed < kRuns; ++seed) {
        options.seed = seed;
        Film film;
        cost.seconds =
            std::min(cost.seconds,
                     shortest_time(1, [&] { film = render_film(rehearsal.studio, *rehearsal.stage, options).film; }));
        std::vector<double> picture;
        for (const Bands& pixel : film.layers[0].pixels) {
            double sum = 0.0;
            for (const float band : pixel) sum += static_cast<double>(band);
            picture.push_back(sum);
        }
        pictures.push_back(std::move(picture));
    }
    double mean = 0.0;
    double squares = 0.0;
    for (std::size_t p = 0; p < pictures[0].size(); ++p) {
        double of_pixel = 0.0;
        for (const auto& picture : pictures) of_pixel += picture[p] / kRuns;
        for (const auto& picture : pictures) squares += std::pow(picture[p] - of_pixel, 2.0) / (kRuns - 1);
        mean += of_pixel;
    }
    const auto pixels = static_cast<double>(pictures[0].size());
    cost.noise = std::sqrt(squares / pixels) / (mean / pixels);
    return cost;
}

// As wide and as high as the modifier's front.
std::string plain_for(const ModifierShape& shape) {
    return std::visit(
        [](const auto& front) {
            if constexpr (requires { front.width_m; }) {
                return fmt::format("{{ shape = \"rectangle\", width = {}, height = {} }}", front.width_m,
                                   front.height_m);
            } else if constexpr (requires { front.diameter_m; }) {
                return fmt::format("{{ shape = \"rectangle\", width = {0}, height = {0} }}", front.diameter_m);
            } else {
                return std::string("{ shape = \"rectangle\", width = 0.05, height = 0.05 }");
            }
        },
        shape);
}

void compare(const std::vector<std::string>& names) {
    const tbb::global_control one(tbb::global_control::max_allowed_parallelism, 1);
    for (const std::string& name : names) {
        const auto settings = read_kit_file(name, own_library().kit);
        if (!settings) continue;
        const Cost plain = cost_of(plain_for(settings->shape));  // each time anew: the machine's speed changes
        const Cost cost = cost_of('"' + name + '"');
        const double time = cost.seconds / plain.seconds;
        fmt::print("kit: {:28} time {:.2f} (wanted 1.30), noise at equal time {:.2f} (wanted 1.50)\n", name, time,
                   cost.noise / plain.noise * std::sqrt(time));
    }
}

}  // namespace

void bench_kit() {
    std::vector<std::string> names;
    const std::vector<std::string> all = toml_names_in(own_library().kit);
    for (const char* name : {"octa-120", "dish-55", "ring-45", "umbrella-white-105", "umbrella-silver-105",
                             "umbrella-through-105", "frame-200", "window-120x150"}) {
        if (std::find(all.begin(), all.end(), name) != all.end()) names.emplace_back(name);
    }
    compare(names);
}

void bench_whole_kit() { compare(toml_names_in(own_library().kit)); }

}  // namespace understudy
