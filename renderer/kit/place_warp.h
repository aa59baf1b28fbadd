// Spreads the unit square so that places which shine more get more of it: constant within each cell of a grid, and
// known exactly both ways.
//
// The marginal of the rows, then the columns of a row, each by inversion: neighbours stay neighbours, so stratified
// samples stay stratified. The cells may be of any width: a window's are its panes and its bars.
#pragma once

#include <array>
#include <vector>

#include "base/geometry.h"

namespace understudy {

class PlaceWarp {
  public:
    // As many cells as the most divided window has panes and bars.
    static constexpr std::size_t kMost = 41;
    // Where cells begin and end: from 0 to 1, rising.
    using Breaks = std::vector<float>;
    static Breaks even_breaks(std::size_t cells);

    // weights: what each cell gets of the square, row by row, all above 0.
    PlaceWarp(const Breaks& across, const Breaks& up, const std::vector<float>& weights);

    struct Place {
        Vec2 square{0.0F};
        float stretch = 1.0F;  // area of the square for each area of what it came from
    };
    Place at(const Vec2& even) const {
        const Step y = step(up_, rows_, even.y);
        const Step x = step(across_, columns_[y.cell], even.x);
        return {{x.place, y.place}, x.stretch * y.stretch};
    }
    Vec2 even_of(const Vec2& square) const {
        const std::size_t row = cell_at(up_, square.y);
        return {back(across_, columns_[row], square.x), back(up_, rows_, square.y)};
    }

  private:
    // Rising, from 0 to 1; what lies behind the last cell is never reached.
    using Line = std::array<float, kMost + 1>;
    struct Step {
        std::size_t cell;
        float place;
        float stretch;
    };
    // Counted, not searched: a search's branches would be guessed wrong. 1 belongs to the last cell.
    static std::size_t cell_at(const Line& line, float place) {
        int passed = 0;
        for (std::size_t i = 1; i < kMost; ++i) passed += line[i] <= place && line[i] < 1.0F ? 1 : 0;
        return static_cast<std::size_t>(passed);
    }
    static Step step(const Line& breaks, const Line& shares, float u) {
        const std::size_t cell = cell_at(shares, u);
        const float width = shares[cell + 1] - shares[cell];
        const float length = breaks[cell + 1] - breaks[cell];
        const float part = std::min((u - shares[cell]) / width, 1.0F);
        return {cell, breaks[cell] + part * length, length / width};
    }
    static float back(const Line& breaks, const Line& shares, float place) {
        const std::size_t cell = cell_at(breaks, place);
        const float part = (place - breaks[cell]) / (breaks[cell + 1] - breaks[cell]);
        return shares[cell] + part * (shares[cell + 1] - shares[cell]);
    }
    static Line line_of(const Breaks& breaks);
    static Line cumulative(const float* weights, std::size_t cells);

    Line across_{}, up_{};  // the cells' breaks
    Line rows_{};
    std::array<Line, kMost> columns_{};
};

}  // namespace understudy
