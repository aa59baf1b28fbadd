// A density over the unit square, bilinear between the points of a 3 × 3 grid: sampled exactly, and known exactly.
#pragma once

#include <array>
#include <type_traits>

#include "base/wide.h"

namespace understudy {

// For one receiver (float) or sixteen (Wide).
template <class Real>
class SquareDensityOf {
  public:
    using Place = std::conditional_t<std::is_same_v<Real, float>, Vec2, Wide2>;

    SquareDensityOf() = default;
    // Weights on the 3 × 3 grid, row by row; all non-negative, not all zero.
    explicit SquareDensityOf(const std::array<Real, 9>& weights)
        : weights_(weights), rows_{{row(0).mass(), row(1).mass(), row(2).mass()}}, scale_(1.0F / rows_.mass()) {}

    Place sample(const Place& u) const {
        const Real y = rows_.sample(u.y);
        return {across(y).sample(u.x), y};
    }
    Real density(const Place& square) const { return scale_ * across(square.y).at(square.x); }

    const std::array<Real, 9>& weights() const { return weights_; }

  private:
    // Linear over [0, 1] between its values at 0, ½ and 1. Either half is as likely as the other, so a branch would be
    // guessed wrong.
    struct Line {
        std::array<Real, 3> values;

        Real mass() const { return 0.25F * (values[0] + 2.0F * values[1] + values[2]); }
        Real at(const Real& x) const {
            const auto second = x >= 0.5F;
            const Real a = second ? values[1] : values[0];
            const Real b = second ? values[2] : values[1];
            return a + (b - a) * (2.0F * x - (second ? Real{} + 1.0F : Real{}));
        }
        // In the half that it falls into: x in [0, 1] with 2 ∫₀ˣ (a + (b − a) t) dt = rest, in the form that does not
        // cancel.
        Real sample(const Real& u) const {
            const Real first = values[0] + values[1];
            const Real target = u * (first + values[1] + values[2]);
            const auto second = target >= first;
            const Real a = second ? values[1] : values[0];
            const Real b = second ? values[2] : values[1];
            const Real rest = second ? target - first : target;
            const Real below = a + square_root(larger(Real{}, a * a + rest * (b - a)));
            const Real share = rest / below;
            const Real x = below > 0.0F ? smaller(Real{} + 1.0F, share) : Real{};
            return 0.5F * (second ? x + 1.0F : x);
        }
    };

    Line row(std::size_t j) const { return {{weights_[3 * j], weights_[3 * j + 1], weights_[3 * j + 2]}}; }
    Line across(const Real& y) const {
        const auto column = [&](std::size_t i) { return Line{{weights_[i], weights_[3 + i], weights_[6 + i]}}.at(y); };
        return {{column(0), column(1), column(2)}};
    }

    std::array<Real, 9> weights_{};
    Line rows_{};  // mass of each row
    Real scale_{};
};

using SquareDensity = SquareDensityOf<float>;

}  // namespace understudy
