// What a path's numbers are worth: squared error over that of random numbers, on light that an edge shades; and what
// they cost.

#include <cmath>

#include <fmt/format.h>

#include "bench.h"
#include "transport/sampler.h"

namespace understudy {

namespace {

constexpr std::uint32_t kPixels = 4096;

// A place in a pixel, a point of a light, and a shade between them whose edge lies aslant across both.
double light_past_an_edge(const Vec4& u) { return 0.7F * u.x + 0.2F * u.y < u.z + 0.3F * u.w ? 1.0 : 0.0; }

// numbers(pixel, sample): four of them.
template <class Numbers>
double squared_error(std::uint32_t samples, const Numbers& numbers) {
    std::vector<double> means(kPixels, 0.0);
    double truth = 0.0;
    for (std::uint32_t pixel = 0; pixel < kPixels; ++pixel) {
        for (std::uint32_t i = 0; i < samples; ++i) means[pixel] += light_past_an_edge(numbers(pixel, i)) / samples;
        truth += means[pixel] / kPixels;
    }
    double error = 0.0;
    for (const double mean : means) error += (mean - truth) * (mean - truth) / kPixels;
    return error;
}

}  // namespace

void bench_sampler() {
    const auto stratified = [](std::uint32_t pixel, std::uint32_t i) { return Sampler(1, pixel, i).group(3); };
    // Every number the first of a sequence of its own: independent of all others.
    const auto random = [](std::uint32_t pixel, std::uint32_t i) { return Sampler(i + 2, pixel, 0).group(3); };
    for (const std::uint32_t samples : {4U, 16U, 64U}) {
        fmt::print("sampler: {:2} samples: squared error {:.2f} of random numbers'\n", samples,
                   squared_error(samples, stratified) / squared_error(samples, random));
    }
    const double seconds = shortest_time(5, [&] { squared_error(16, stratified); });
    fmt::print("sampler: {:.1f} ns for four numbers\n", 1e9 * seconds / (16.0 * kPixels));
}

}  // namespace understudy
