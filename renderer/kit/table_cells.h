// The cell round a table's knot, half way to its neighbours on each side, in the four coordinates.
#pragma once

#include "kit/emission_table.h"

namespace understudy {

struct CellPlace {
    Vec3 place;
    Vec3 normal;
    Vec3 first;  // the axes that azimuths are measured in
    Vec3 second;
    float measure;  // area for a step of the coordinates, up to a factor

    // The same cell further round the axis, a share of a full turn.
    CellPlace turned_by(float turns) const;
    Frame frame() const { return {first, second, normal}; }
};

struct CellDirection {
    Vec3 local;     // in first, second, normal
    float measure;  // projected solid angle for a step of the coordinates, up to a factor
};

class TableCells {
  public:
    explicit TableCells(const EmissionLayout& layout);

    // u, v in [0, 1]: where in the cell; 0.5 of an inner cell is the knot.
    CellPlace place(std::size_t across, std::size_t along, float u, float v) const;
    CellDirection direction(std::size_t azimuth, std::size_t angle, float u, float v) const;
    // At the knot itself.
    Vec3 knot_direction(std::size_t azimuth, std::size_t angle) const;

  private:
    EmissionLayout layout_;
    std::vector<float> sines_;
};

}  // namespace understudy
