// Cloth under tension: evens a sheet out over a width in metres, however fine its mesh is.
#pragma once

#include "sitter/wardrobe/sheet.h"

namespace understudy {

class Tension {
  public:
    // Measures the sheet by what it lies over, its points' `skin`.
    explicit Tension(const ClothSheet& sheet);

    // What may be said about where a point goes: its number and where tension draws it.
    using Held = std::function<Double3(std::size_t, const Double3&)>;

    // The places x that make ∫ |x − rest|² + width² |∇x|² least, by relaxation, each point held as it is told to be,
    // or free. Bumps narrower than the width go, wider ones stay. The border stays. Every point belongs to
    // a triangle.
    std::vector<Double3> drawn(const std::vector<Double3>& rest, double width_m, const Held& held = nullptr) const;

    // Without crumples: each point goes halfway to the plain mean of its neighbours, so many times; those at the border
    // stay. Where the mesh is fine, little else changes.
    std::vector<Double3> unfolded(std::vector<Double3> places, int rounds) const;

  private:
    struct Pull {
        std::uint32_t to;
        double strength;
    };
    std::vector<Pull> pulls_;         // by the points that are drawn
    std::vector<std::size_t> first_;  // of a point's pulls, and one past the last point's
    std::vector<double> areas_;
    std::vector<bool> at_border_;
};

}  // namespace understudy
