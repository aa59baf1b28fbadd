#include "transport/path_spread.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace understudy {

namespace {

// From a quarter of the mean to four times as many, by powers of two: blocks of such counts are stratified.
constexpr double kMostDoublings = 2.0;
constexpr int kLeastPaths = 2;  // of one nothing can be told

int count_for(double wanted, int mean) {
    const double doublings = std::clamp(std::round(std::log2(wanted / mean)), -kMostDoublings, kMostDoublings);
    return std::max(std::min(kLeastPaths, mean), static_cast<int>(std::lround(mean * std::exp2(doublings))));
}

}  // namespace

PathSpread::PathSpread(std::vector<std::size_t> pixels)
    : pixels_(std::move(pixels)), found_(pixels_.size()), shares_(pixels_.size()) {}

void PathSpread::plan(int mean) {
    const bool known = knows();
    const std::vector<int> counts = known ? counts_by_noise(mean) : std::vector<int>(pixels_.size(), mean);
    for (std::size_t t = 0; t < shares_.size(); ++t) {
        const int used = shares_[t].first + shares_[t].count;
        // The next whole block of so many of a pixel's numbers.
        const int block = (used + counts[t] - 1) / counts[t] * counts[t];
        shares_[t] = {known ? block : used, counts[t]};
    }
}

void PathSpread::learn(std::size_t tile, double noise, double work) {
    const double paths = shares_[tile].count;
    found_[tile].paths += paths;
    found_[tile].noise += noise * paths;
    found_[tile].work += work;
}

bool PathSpread::knows() const {
    const auto told = [](const Found& found) { return found.paths > 0.0 && found.work > 0.0; };
    const auto noisy = [](const Found& found) { return found.noise > 0.0; };
    return std::all_of(found_.begin(), found_.end(), told) && std::any_of(found_.begin(), found_.end(), noisy);
}

std::vector<int> PathSpread::counts_by_noise(int mean) const {
    std::vector<double> work_a_path;
    std::vector<double> wanted;
    for (std::size_t t = 0; t < found_.size(); ++t) {
        const Found& found = found_[t];
        work_a_path.push_back(found.work / found.paths);
        const double work_a_pixel = work_a_path.back() / static_cast<double>(pixels_[t]);
        wanted.push_back(std::sqrt(found.noise / found.paths / work_a_pixel));
    }
    const auto work = [&](const std::vector<int>& counts) {
        return std::inner_product(counts.begin(), counts.end(), work_a_path.begin(), 0.0);
    };
    const auto counts_at = [&](double scale) {
        std::vector<int> counts;
        counts.reserve(wanted.size());
        for (const double want : wanted) counts.push_back(count_for(scale * want, mean));
        return counts;
    };
    // The scale at which they cost as much as were they even, halving the ways to it on a scale of powers.
    const double allowed = work(std::vector<int>(found_.size(), mean));
    const double most = *std::max_element(wanted.begin(), wanted.end());
    double low = -30.0;
    double high = 30.0;
    for (int i = 0; i < 40; ++i) {
        const double middle = 0.5 * (low + high);
        (work(counts_at(std::exp2(middle) * mean / most)) <= allowed ? low : high) = middle;
    }
    return counts_at(std::exp2(low) * mean / most);
}

}  // namespace understudy
