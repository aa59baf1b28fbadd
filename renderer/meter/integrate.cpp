#include "meter/integrate.h"

#include <array>
#include <cmath>

#include <tbb/parallel_for.h>

#include "transport/dimensions.h"

namespace understudy {

namespace {

constexpr std::size_t kSequences = 16;
constexpr std::uint32_t kFirstLength = 32;
constexpr std::uint32_t kLastLength = 8192;
constexpr std::uint32_t kMeterSeed = 0x6d657465;
// A light that gives less than this share of a reading need not be known to half a per cent of itself.
constexpr double kNoticeable = 0.1;

using LayerSums = std::array<double, kMaxLayers>;

// Adds the samples [from, to) of one sequence.
void extend(const Stage& stage, const Gathering& place, const std::vector<Bands>& weights, std::uint32_t sequence,
            std::uint32_t from, std::uint32_t to, LayerSums& sums) {
    constexpr float kShare = static_cast<float>(kBandCount) / static_cast<float>(kWaveCount);
    std::vector<Path> paths;
    paths.reserve(to - from);
    for (std::uint32_t i = from; i < to; ++i) {
        const Sampler sampler(kMeterSeed, sequence, i);
        paths.emplace_back(sampler, sample_waves(sampler.group(kWave).x));
    }
    PathTracer(stage).gather(place, paths);
    for (const Path& path : paths) {
        for (std::size_t l = 0; l < weights.size(); ++l) {
            float sum = 0.0F;
            for (std::size_t w = 0; w < kWaveCount; ++w) {
                sum += path.light.layers[l][static_cast<glm::length_t>(w)] * weights[l][path.waves.band[w]];
            }
            sums[l] += static_cast<double>(kShare * sum);
        }
    }
}

Estimate estimate_of(const std::array<double, kSequences>& means) {
    double mean = 0.0;
    for (const double value : means) mean += value / kSequences;
    double squares = 0.0;
    for (const double value : means) squares += (value - mean) * (value - mean);
    return {mean, std::sqrt(squares / (kSequences * (kSequences - 1.0)))};
}

Gathered summarise(const std::array<LayerSums, kSequences>& sums, std::size_t layers, double length) {
    Gathered result;
    std::array<double, kSequences> total{};
    for (std::size_t l = 0; l < layers; ++l) {
        std::array<double, kSequences> means{};
        for (std::size_t s = 0; s < kSequences; ++s) {
            means[s] = sums[s][l] / length;
            total[s] += means[s];
        }
        result.layers.push_back(estimate_of(means));
    }
    result.total = estimate_of(total);
    return result;
}

bool good_enough(const Gathered& gathered, const Precision& precision) {
    const auto within = [&](const Estimate& estimate, double part_of) {
        return estimate.standard_error <= std::max(precision.relative * part_of, precision.absolute);
    };
    if (!within(gathered.total, gathered.total.mean)) return false;
    for (const Estimate& layer : gathered.layers) {
        if (!within(layer, std::max(layer.mean, kNoticeable * gathered.total.mean))) return false;
    }
    return true;
}

}  // namespace

Gathered gather_light(const Stage& stage, const Gathering& place, const std::vector<Bands>& weights,
                      const Precision& precision) {
    std::array<LayerSums, kSequences> sums{};
    std::uint32_t done = 0;
    for (std::uint32_t length = kFirstLength;; length *= 2) {
        tbb::parallel_for(std::size_t{0}, kSequences, [&](std::size_t s) {
            extend(stage, place, weights, static_cast<std::uint32_t>(s), done, length, sums[s]);
        });
        done = length;
        Gathered result = summarise(sums, weights.size(), done);
        if (done >= kLastLength || good_enough(result, precision)) return result;
    }
}

}  // namespace understudy
