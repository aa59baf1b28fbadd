#include "meter/integrate.h"

#include <array>
#include <cmath>
#include <numeric>

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

constexpr float kShare = static_cast<float>(kBandCount) / static_cast<float>(kWaveCount);

struct Sums {
    std::array<double, kMaxLayers> layers{};
    double by_backdrop = 0.0;
    double by_room = 0.0;
    std::array<Bands, kMaxLayers> transfers{};
};

double weighed(const Light4& light, const Waves& waves, const Bands& weights) {
    float sum = 0.0F;
    for (std::size_t w = 0; w < kWaveCount; ++w) {
        sum += light[static_cast<glm::length_t>(w)] * weights[waves.band[w]];
    }
    return static_cast<double>(kShare * sum);
}

void book(Sums& sums, const PathLight& light, const PathDetours& detours, const Waves& waves,
          const std::vector<Bands>& weights, std::size_t first_ambient) {
    for (std::size_t l = 0; l < weights.size(); ++l) {
        const double all = weighed(light.layers[l], waves, weights[l]);
        sums.layers[l] += all;
        for (std::size_t w = 0; w < kWaveCount; ++w) {
            sums.transfers[l][waves.band[w]] += kShare * light.layers[l][static_cast<glm::length_t>(w)];
        }
        if (detours.before_backdrop)
            sums.by_backdrop += all - weighed((*detours.before_backdrop)[l], waves, weights[l]);
        if (l >= first_ambient) {
            sums.by_room += all;
        } else if (detours.before_room) {
            sums.by_room += all - weighed((*detours.before_room)[l], waves, weights[l]);
        }
    }
}

// Adds the samples [from, to) of one sequence. trace(paths) follows them.
template <class Trace>
void extend(const Trace& trace, const std::vector<Bands>& weights, std::size_t first_ambient, std::uint32_t sequence,
            std::uint32_t from, std::uint32_t to, Sums& sums) {
    std::vector<PathDetours> detours(to - from);
    std::vector<Path> paths;
    paths.reserve(to - from);
    for (std::uint32_t i = from; i < to; ++i) {
        const Sampler sampler(kMeterSeed, sequence, i);
        paths.push_back({sampler, sample_waves(sampler.group(kWave).x)});
        paths.back().light.detours = &detours[i - from];
    }
    trace(paths);
    for (std::size_t i = 0; i < paths.size(); ++i) {
        book(sums, paths[i].light, detours[i], paths[i].waves, weights, first_ambient);
    }
}

Estimate estimate_of(const std::array<double, kSequences>& means) {
    double mean = 0.0;
    for (const double value : means) mean += value / kSequences;
    double squares = 0.0;
    for (const double value : means) squares += (value - mean) * (value - mean);
    return {mean, std::sqrt(squares / (kSequences * (kSequences - 1.0)))};
}

using AllSums = std::array<Sums, kSequences>;

template <class Part>
Estimate estimate_of_part(const AllSums& sums, double length, const Part& part) {
    std::array<double, kSequences> means{};
    for (std::size_t s = 0; s < kSequences; ++s) means[s] = part(sums[s]) / length;
    return estimate_of(means);
}

Bands mean_transfer(const AllSums& sums, double length, std::size_t layer) {
    Bands mean{};
    for (const Sums& sequence : sums) {
        for (std::size_t b = 0; b < kBandCount; ++b) {
            mean[b] += sequence.transfers[layer][b] / static_cast<float>(length * kSequences);
        }
    }
    return mean;
}

Gathered summarise(const AllSums& sums, std::size_t layers, double length) {
    Gathered result;
    for (std::size_t l = 0; l < layers; ++l) {
        result.layers.push_back(estimate_of_part(sums, length, [l](const Sums& one) { return one.layers[l]; }));
        result.transfers.push_back(mean_transfer(sums, length, l));
    }
    result.total = estimate_of_part(
        sums, length, [](const Sums& one) { return std::accumulate(one.layers.begin(), one.layers.end(), 0.0); });
    result.by_backdrop = estimate_of_part(sums, length, [](const Sums& one) { return one.by_backdrop; });
    result.by_room = estimate_of_part(sums, length, [](const Sums& one) { return one.by_room; });
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

template <class Trace>
Gathered integrate(const Stage& stage, const Trace& trace, const std::vector<Bands>& weights,
                   const Precision& precision) {
    const std::size_t first_ambient = stage.emitters().size();
    AllSums sums{};
    std::uint32_t done = 0;
    for (std::uint32_t length = kFirstLength;; length *= 2) {
        tbb::parallel_for(std::size_t{0}, kSequences, [&](std::size_t s) {
            extend(trace, weights, first_ambient, static_cast<std::uint32_t>(s), done, length, sums[s]);
        });
        done = length;
        Gathered result = summarise(sums, weights.size(), done);
        if (done >= kLastLength || good_enough(result, precision)) return result;
    }
}

}  // namespace

Gathered gather_light(const Stage& stage, const Gathering& place, const std::vector<Bands>& weights,
                      const Precision& precision) {
    const PathTracer tracer(stage);
    const auto trace = [&](std::vector<Path>& paths) { tracer.gather(place, paths); };
    return integrate(stage, trace, weights, precision);
}

Gathered look_for_light(const Stage& stage, const Ray& ray, const std::vector<Bands>& weights,
                        const Precision& precision) {
    const PathTracer tracer(stage);
    const auto trace = [&](std::vector<Path>& paths) {
        for (Path& path : paths) path.ray = ray;
        tracer.look(paths);
    };
    return integrate(stage, trace, weights, precision);
}

}  // namespace understudy
