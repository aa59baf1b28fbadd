// The wet edge of the lids: tears drawn up between lid and eye into a small hollow surface, which shows as a thin
// bright line along both lids.
#pragma once

#include "sitter/eye.h"
#include "sitter/refine.h"

namespace understudy {

// Of the hollow between lid and eye: lower lid 0.365 ± 0.153 mm in 45 healthy eyes (N. Yokoi and others, Br. J.
// Ophthalmol. 83, 1999, 92); the upper one is flatter in healthy eyes, by how much is from memory.
inline constexpr double kLowerTearRadius = 0.00036;
inline constexpr double kUpperTearRadius = 0.00028;

class TearLine {
  public:
    static constexpr std::size_t kAcross = 6;  // vertices from the eye up to the lid

    // Adds its vertices and faces to the head. `inner` and `outer` are the edges of this eye's lids; where the caruncle
    // lies, from its inner corner on, there is none.
    TearLine(RefinedHead& head, const RefinedEyeMargins& margins, bool of_the_right_eye);

    // Puts its vertices between lids and eye, once these are laid.
    void place(const Eye& eye, std::vector<Double3>& positions) const;

  private:
    struct Column {
        std::uint32_t inner, outer, before, after;  // on the lids' edges; its neighbours on the inner one
        std::uint32_t first;                        // of its own vertices
        bool upper;
        double share;  // of its radius: it runs out toward the caruncle
    };

    double room_at(const Column& column, const std::vector<Double3>& positions) const;

    std::vector<Column> columns_;
};

}  // namespace understudy
