#include "kit/place_warp.h"

#include <algorithm>
#include <cassert>

namespace understudy {

namespace {

constexpr float kNeverReached = 2.0F;

}  // namespace

PlaceWarp::Breaks PlaceWarp::even_breaks(std::size_t cells) {
    Breaks breaks;
    for (std::size_t i = 0; i <= cells; ++i) breaks.push_back(static_cast<float>(i) / static_cast<float>(cells));
    return breaks;
}

PlaceWarp::Line PlaceWarp::line_of(const Breaks& breaks) {
    assert(breaks.size() >= 2 && breaks.size() <= kMost + 1);
    Line line;
    line.fill(kNeverReached);
    std::copy(breaks.begin(), breaks.end(), line.begin());
    return line;
}

PlaceWarp::Line PlaceWarp::cumulative(const float* weights, std::size_t cells) {
    Line line;
    line.fill(kNeverReached);
    double sum = 0.0;
    for (std::size_t i = 0; i < cells; ++i) sum += static_cast<double>(weights[i]);
    double passed = 0.0;
    line[0] = 0.0F;
    for (std::size_t i = 0; i < cells; ++i) {
        passed += static_cast<double>(weights[i]);
        line[i + 1] = static_cast<float>(passed / sum);
    }
    line[cells] = 1.0F;
    return line;
}

PlaceWarp::PlaceWarp(const Breaks& across, const Breaks& up, const std::vector<float>& weights)
    : across_(line_of(across)), up_(line_of(up)) {
    const std::size_t columns = across.size() - 1;
    const std::size_t rows = up.size() - 1;
    assert(weights.size() == columns * rows);
    std::array<float, kMost> masses{};
    for (std::size_t row = 0; row < rows; ++row) {
        const float* first = &weights[row * columns];
        columns_[row] = cumulative(first, columns);
        for (std::size_t i = 0; i < columns; ++i) masses[row] += first[i];
    }
    rows_ = cumulative(masses.data(), rows);
}

}  // namespace understudy
