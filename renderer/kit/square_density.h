// A density over the unit square, bilinear between the points of a 3 × 3 grid: sampled exactly, and known exactly.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>

#include "base/geometry.h"

namespace understudy {

class SquareDensity {
  public:
    // Weights on the 3 × 3 grid, row by row; all non-negative, not all zero.
    explicit SquareDensity(const std::array<float, 9>& weights)
        : weights_(weights), rows_{{row(0).mass(), row(1).mass(), row(2).mass()}}, scale_(1.0F / rows_.mass()) {}

    Vec2 sample(const Vec2& u) const {
        const float y = rows_.sample(u.y);
        return {across(y).sample(u.x), y};
    }
    float density(const Vec2& square) const { return scale_ * across(square.y).at(square.x); }

  private:
    // Linear over [0, 1] between its values at 0, ½ and 1. Either half is as likely as the other, so a branch would be
    // guessed wrong: the half is an index.
    struct Line {
        std::array<float, 3> values;

        float mass() const { return 0.25F * (values[0] + 2.0F * values[1] + values[2]); }
        float at(float x) const {
            const auto half = static_cast<std::size_t>(x >= 0.5F);
            return values[half] + (values[half + 1] - values[half]) * (2.0F * x - static_cast<float>(half));
        }
        // In the half that it falls into: x in [0, 1] with 2 ∫₀ˣ (a + (b − a) t) dt = rest, in the form that does not
        // cancel.
        float sample(float u) const {
            const float first = values[0] + values[1];
            const float target = u * (first + values[1] + values[2]);
            const auto half = static_cast<std::size_t>(target >= first);
            const auto offset = static_cast<float>(half);
            const float a = values[half];
            const float b = values[half + 1];
            const float rest = target - offset * first;
            const float below = a + std::sqrt(std::max(0.0F, a * a + rest * (b - a)));
            const float x = below > 0.0F ? std::min(1.0F, rest / below) : 0.0F;
            return 0.5F * (x + offset);
        }
    };

    Line row(std::size_t j) const { return {{weights_[3 * j], weights_[3 * j + 1], weights_[3 * j + 2]}}; }
    Line across(float y) const {
        const auto column = [&](std::size_t i) { return Line{{weights_[i], weights_[3 + i], weights_[6 + i]}}.at(y); };
        return {{column(0), column(1), column(2)}};
    }

    std::array<float, 9> weights_;
    Line rows_;  // mass of each row
    float scale_;
};

}  // namespace understudy
