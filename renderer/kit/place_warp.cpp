#include "kit/place_warp.h"

namespace understudy {

PlaceWarp::Line PlaceWarp::cumulative(const float* weights) {
    Line line{};
    double sum = 0.0;
    for (std::size_t i = 0; i < kSide; ++i) sum += static_cast<double>(weights[i]);
    double passed = 0.0;
    for (std::size_t i = 0; i < kSide; ++i) {
        passed += static_cast<double>(weights[i]);
        line[i + 1] = static_cast<float>(passed / sum);
    }
    line[kSide] = 1.0F;
    return line;
}

PlaceWarp::PlaceWarp(const std::vector<float>& weights) {
    std::array<float, kSide> masses{};
    for (std::size_t row = 0; row < kSide; ++row) {
        const float* first = &weights[row * kSide];
        columns_[row] = cumulative(first);
        for (std::size_t i = 0; i < kSide; ++i) masses[row] += first[i];
    }
    rows_ = cumulative(masses.data());
}

}  // namespace understudy
