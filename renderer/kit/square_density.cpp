#include <algorithm>

#include "kit/emitter.h"

namespace understudy {

namespace {

// A density over [0, 1] that is linear between its values at 0, ½ and 1.
struct Line {
    float start, middle, end;

    float mass() const { return 0.25F * (start + 2.0F * middle + end); }
    float at(float x) const {
        return x < 0.5F ? start + (middle - start) * 2.0F * x : middle + (end - middle) * (2.0F * x - 1.0F);
    }
    float sample(float u) const;
};

// x in [0, 1] with ∫₀ˣ (a + (b − a) t) dt = u · (a + b) / 2, in the form that does not cancel.
float sample_linear(float a, float b, float u) {
    const float root = std::sqrt(std::max(0.0F, a * a + u * (b * b - a * a)));
    const float below = a + root;
    return below > 0.0F ? std::min(1.0F, u * (a + b) / below) : u;
}

float Line::sample(float u) const {
    const float first = start + middle;
    const float second = middle + end;
    const float target = u * (first + second);
    if (target < first) return 0.5F * sample_linear(start, middle, target / first);
    return 0.5F + 0.5F * sample_linear(middle, end, std::min(1.0F, (target - first) / second));
}

}  // namespace

SquareDensity::SquareDensity(const std::array<float, 9>& weights) : weights_(weights) {
    const auto row = [&](std::size_t j) {
        return Line{weights_[3 * j], weights_[3 * j + 1], weights_[3 * j + 2]}.mass();
    };
    const float mass = Line{row(0), row(1), row(2)}.mass();
    for (float& weight : weights_) weight /= mass;
}

Vec2 SquareDensity::sample(const Vec2& u) const {
    const auto row = [&](std::size_t j) {
        return Line{weights_[3 * j], weights_[3 * j + 1], weights_[3 * j + 2]}.mass();
    };
    const float y = Line{row(0), row(1), row(2)}.sample(u.y);
    const auto column = [&](std::size_t i) { return Line{weights_[i], weights_[3 + i], weights_[6 + i]}.at(y); };
    return {Line{column(0), column(1), column(2)}.sample(u.x), y};
}

float SquareDensity::density(const Vec2& square) const {
    const auto column = [&](std::size_t i) { return Line{weights_[i], weights_[3 + i], weights_[6 + i]}.at(square.y); };
    return Line{column(0), column(1), column(2)}.at(square.x);
}

}  // namespace understudy
