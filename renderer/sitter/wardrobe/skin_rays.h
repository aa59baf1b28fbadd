// Where a straight way first meets the head: what glasses and hats are fitted by.
#pragma once

#include <optional>

#include "sitter/skinned_mesh.h"

namespace understudy {

// The face and the skull of a straight head, with or without its ears.
class HeadSurface {
  public:
    enum class Ears { kKept, kLeftOut };
    HeadSurface(const SkinnedMesh& mesh, Ears ears);

    // The distance along a unit way to the first skin that faces it.
    std::optional<double> first_skin(const Double3& origin, const Double3& way) const;
    // How far forward, or out to a side, the head reaches at a place; none: it is not there.
    std::optional<double> front_at(double x, double y) const;
    std::optional<double> side_at(double side, double y, double z) const;

  private:
    std::vector<std::array<Double3, 3>> triangles_;
};

}  // namespace understudy
