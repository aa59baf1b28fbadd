// How the error falls with the number of samples, against a long render of the same scene with other numbers.

#include <cmath>

#include <fmt/format.h>

#include "references.h"

namespace understudy {

namespace {

// Root of the mean squared difference of all bands, over the reference's mean.
double relative_error(const Film& film, const Film& reference) {
    double squares = 0.0;
    double sum = 0.0;
    std::size_t count = 0;
    for (std::size_t l = 0; l < film.layers.size(); ++l) {
        for (std::size_t p = 0; p < film.pixel_count(); ++p) {
            // The mean over bands: what the eye sees as noise is light and dark, not the split into bands.
            double difference = 0.0;
            for (std::size_t b = 0; b < kBandCount; ++b) {
                difference += static_cast<double>(film.layers[l].pixels[p][b] - reference.layers[l].pixels[p][b]);
                sum += static_cast<double>(reference.layers[l].pixels[p][b]);
            }
            squares += difference * difference;
            ++count;
        }
    }
    return std::sqrt(squares / static_cast<double>(count)) / (sum / static_cast<double>(count));
}

}  // namespace

void bench_convergence() {
    const Rehearsal rehearsal = bench_scene("three-to-one", 80, 100);
    const Film reference = traced(rehearsal, 4096, 1);
    double first = 0.0;
    double last = 0.0;
    for (const int samples : {1, 4, 16, 64, 256}) {
        last = relative_error(traced(rehearsal, samples), reference);
        if (samples == 4) first = last;
        fmt::print("convergence: {:4} samples, error {:.4f} of the mean\n", samples, last);
    }
    fmt::print("convergence: falls as samples^{:.2f} from 4 to 256 (wanted -0.50 or steeper)\n",
               std::log(last / first) / std::log(256.0 / 4.0));
}

}  // namespace understudy
