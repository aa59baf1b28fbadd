// Spreads the unit square so that places which shine more get more of it: constant within each cell of a grid, and
// known exactly both ways.
//
// The marginal of the rows, then the columns of a row, each by inversion: neighbours stay neighbours, so stratified
// samples stay stratified.
#pragma once

#include <algorithm>
#include <array>
#include <vector>

#include "base/geometry.h"

namespace understudy {

class PlaceWarp {
  public:
    static constexpr std::size_t kSide = 32;

    // kSide × kSide weights, row by row, all above 0.
    explicit PlaceWarp(const std::vector<float>& weights);

    struct Place {
        Vec2 square{0.0F};
        float stretch = 1.0F;  // area of the square for each area of what it came from
    };
    Place at(const Vec2& even) const {
        const Step y = step(rows_, even.y);
        const Step x = step(columns_[y.cell], even.x);
        return {{x.place, y.place}, x.stretch * y.stretch};
    }
    Vec2 even_of(const Vec2& square) const {
        const std::size_t row = cell_of(square.y);
        return {back(columns_[row], square.x), back(rows_, square.y)};
    }

  private:
    using Line = std::array<float, kSide + 1>;  // cumulative, 0 … 1
    struct Step {
        std::size_t cell;
        float place;
        float stretch;
    };
    static constexpr auto kCells = static_cast<float>(kSide);
    static std::size_t cell_of(float place) {
        return static_cast<std::size_t>(std::min(std::max(place, 0.0F) * kCells, kCells - 0.5F));
    }
    static Step step(const Line& line, float u) {
        // Counted, not searched: a search's branches would be guessed wrong.
        int passed = 0;
        for (std::size_t i = 1; i < kSide; ++i) passed += line[i] <= u ? 1 : 0;
        const auto cell = static_cast<std::size_t>(passed);
        const float width = line[cell + 1] - line[cell];
        const float part = std::min((u - line[cell]) / width, 1.0F);
        return {cell, (static_cast<float>(cell) + part) / kCells, 1.0F / (width * kCells)};
    }
    static float back(const Line& line, float place) {
        const std::size_t cell = cell_of(place);
        return line[cell] + (place * kCells - static_cast<float>(cell)) * (line[cell + 1] - line[cell]);
    }
    static Line cumulative(const float* weights);

    Line rows_{};
    std::array<Line, kSide> columns_{};
};

}  // namespace understudy
