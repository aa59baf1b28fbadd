// What a modifier costs beside a plain, even rectangle as wide and as high: the same portrait with each of them as its
// only light. (A larger light has wider penumbras, which are noisy by themselves.)
//
// Noise: the spread of a pixel over renders with other numbers, over the pixel, both rms over the picture: a spot that
// lights a tenth of it is not called noisy for the nine that are dark. At equal time it is the spread at equal samples
// times the root of the time. The two are rendered by turns, and the shortest processor time of each counts.

#include <cmath>
#include <ctime>

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
constexpr unsigned kRuns = 6;

// One portrait by one light, rendered again and again.
struct Sitting {
    Rehearsal rehearsal;
    double seconds = 1e30;
    std::vector<std::vector<double>> pictures;
};

Sitting portrait_by(const std::string& modifier) {
    const std::string scene =
        "[picture]\nwidth = 96\nheight = 120\n[[light]]\nangle = -35\nheight = 1.6\ndistance = 1.3\nmeter = 4\n"
        "modifier = " +
        modifier + "\n";
    const auto setup = parse_setup(scene, "bench.toml", own_library());
    if (setup) {
        if (auto studio = place_studio(*setup, own_library())) {
            Sitting sitting;
            sitting.rehearsal.studio = std::move(*studio);
            sitting.rehearsal.stage = std::make_unique<Stage>(sitting.rehearsal.studio, Stage::With::kSitter);
            return sitting;
        }
    }
    fmt::print(stderr, "the modifier {} cannot be lit; run understudy check on a scene with it\n", modifier);
    std::exit(1);
}

void render_again(Sitting& sitting, unsigned seed) {
    RenderOptions options;
    options.samples = kSamples;
    options.threads = 1;
    options.seed = seed;
    const std::clock_t start = std::clock();
    const Film film = render_film(sitting.rehearsal.studio, *sitting.rehearsal.stage, options).film;
    sitting.seconds = std::min(sitting.seconds, static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
    std::vector<double>& picture = sitting.pictures.emplace_back();
    for (const Bands& pixel : film.layers[0].pixels) {
        double sum = 0.0;
        for (const float band : pixel) sum += static_cast<double>(band);
        picture.push_back(sum);
    }
}

// Relative, at equal samples.
double noise_of(const Sitting& sitting) {
    double light = 0.0;
    double spread = 0.0;
    for (std::size_t p = 0; p < sitting.pictures[0].size(); ++p) {
        double mean = 0.0;
        for (const auto& picture : sitting.pictures) mean += picture[p] / kRuns;
        for (const auto& picture : sitting.pictures) spread += std::pow(picture[p] - mean, 2.0) / (kRuns - 1);
        light += mean * mean;
    }
    return std::sqrt(spread / light);
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
        Sitting plain = portrait_by(plain_for(settings->shape));
        Sitting lit = portrait_by('"' + name + '"');
        for (unsigned seed = 0; seed < kRuns; ++seed) {
            render_again(plain, seed);
            render_again(lit, seed);
        }
        const double time = lit.seconds / plain.seconds;
        fmt::print("kit: {:28} time {:.2f} (wanted 1.30), noise at equal time {:.2f} (wanted 1.50)\n", name, time,
                   noise_of(lit) / noise_of(plain) * std::sqrt(time));
    }
}

}  // namespace

void bench_kit() {
    std::vector<std::string> names;
    const std::vector<std::string> all = toml_names_in(own_library().kit);
    for (const char* name : {"octa-120", "dish-55", "dish-55-grid", "snoot", "ring-45", "umbrella-white-105",
                             "umbrella-silver-105", "umbrella-through-105", "frame-200", "window-120x150"}) {
        if (std::find(all.begin(), all.end(), name) != all.end()) names.emplace_back(name);
    }
    compare(names);
}

void bench_whole_kit() { compare(toml_names_in(own_library().kit)); }

}  // namespace understudy
