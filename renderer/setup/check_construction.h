// Whether the parts of a modifier fit each other: a tube inside the walls, a cloth inside the box.
#pragma once

#include "setup/setup.h"
#include "setup/table_reader.h"

namespace understudy {

// Tells what does not fit; the table is where the parts were said. Whether all of it fits.
bool construction_fits(TableReader& table, const Construction& construction, const ModifierShape& front);

// Of a round body, or the smaller half across of a flat-walled one, so high above the back.
double inside_radius_m(const Construction& construction, const ModifierShape& front, double before_back_m);

}  // namespace understudy
