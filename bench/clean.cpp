// What cleaning a picture of noise is worth: few paths cleaned against many as they were traced, both against a long
// render, which is made once and kept beside the bench.

#include <cmath>

#include <fmt/format.h>

#include "cli/finish.h"
#include "film/display_picture.h"
#include "references.h"
#include "transport/render.h"

namespace understudy {

namespace {

constexpr int kWidth = 200;
constexpr int kHeight = 250;
constexpr int kReferenceSamples = 4096;  // its own noise is a sixty-fourth of what it is compared with

// Rec. 709 luma of the codes that are shown, 0 … 255.
std::vector<double> luma_of(const Picture& picture) {
    std::vector<double> luma;
    for (const DisplayPixel& pixel : display_picture(picture).pixels) {
        luma.push_back(0.2126 * pixel[0] + 0.7152 * pixel[1] + 0.0722 * pixel[2]);
    }
    return luma;
}

// 1 − SSIM: Z. Wang, A. Bovik, H. Sheikh and E. Simoncelli, "Image Quality Assessment: From Error Visibility to
// Structural Similarity", IEEE Transactions on Image Processing 13(4), 2004; windows of 11 × 11, σ = 1.5, K = 0.01,
// 0.03.
double seen_difference(const Picture& picture, const Picture& reference) {
    constexpr int kReach = 5;
    constexpr double kC1 = 0.01 * 255.0 * 0.01 * 255.0;
    constexpr double kC2 = 0.03 * 255.0 * 0.03 * 255.0;
    const std::vector<double> a = luma_of(picture);
    const std::vector<double> b = luma_of(reference);
    double sum = 0.0;
    int count = 0;
    for (int y = kReach; y < picture.height - kReach; ++y) {
        for (int x = kReach; x < picture.width - kReach; ++x) {
            double weights = 0.0, mean_a = 0.0, mean_b = 0.0, aa = 0.0, bb = 0.0, ab = 0.0;
            for (int j = -kReach; j <= kReach; ++j) {
                for (int i = -kReach; i <= kReach; ++i) {
                    const double w = std::exp(-(i * i + j * j) / (2.0 * 1.5 * 1.5));
                    const auto at = static_cast<std::size_t>(y + j) * static_cast<std::size_t>(picture.width) +
                                    static_cast<std::size_t>(x + i);
                    weights += w;
                    mean_a += w * a[at];
                    mean_b += w * b[at];
                    aa += w * a[at] * a[at];
                    bb += w * b[at] * b[at];
                    ab += w * a[at] * b[at];
                }
            }
            mean_a /= weights;
            mean_b /= weights;
            const double var_a = aa / weights - mean_a * mean_a;
            const double var_b = bb / weights - mean_b * mean_b;
            const double both = ab / weights - mean_a * mean_b;
            sum += (2.0 * mean_a * mean_b + kC1) * (2.0 * both + kC2) /
                   ((mean_a * mean_a + mean_b * mean_b + kC1) * (var_a + var_b + kC2));
            ++count;
        }
    }
    return 1.0 - sum / count;
}

// As `render` traces: paths go where the picture is noisy.
Film traced_by_noise(const Rehearsal& rehearsal, int samples, const Developing& developing) {
    RenderOptions options;
    options.samples = samples;
    options.weights = layer_gains(developing);
    return render_film(rehearsal.studio, *rehearsal.stage, options).film;
}

}  // namespace

void bench_clean() {
    const auto finisher = Finisher::open(false);
    if (!finisher) fail_bench(finisher.problems());
    for (const char* scene : {"three-to-one", "side-strip", "overhead", "reflector", "umbrella", "window"}) {
        Rehearsal rehearsal = bench_scene(scene, kWidth, kHeight);
        const FilmCard card = bench_card(rehearsal);
        const Developing developing = developing_of(card);
        const Picture wanted = develop(reference_of(scene, rehearsal, card, kReferenceSamples), developing);
        const Picture plain = develop(traced(rehearsal, 64), developing);
        const auto tell = [&](const char* way, const Film& film) {
            const Picture cleaned = finisher->finish(film, developing);
            fmt::print(
                "clean: {:12} 8 samples {} cleaned, over 64 traced evenly: squared error {:.2f}, difference to the eye "
                "{:.2f} (wanted at most 1)\n",
                scene, way, squared_error(cleaned, wanted) / squared_error(plain, wanted),
                seen_difference(cleaned, wanted) / seen_difference(plain, wanted));
        };
        tell("by noise", traced_by_noise(rehearsal, 8, developing));
        tell("evenly", traced(rehearsal, 8));
    }
}

}  // namespace understudy
