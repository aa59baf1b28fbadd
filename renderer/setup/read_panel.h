// [[panel]]
#pragma once

#include "setup/setup.h"
#include "setup/table_reader.h"

namespace understudy {

// number: 1 for the first panel of the file.
PanelSettings read_panel(TableReader table, int number, std::optional<double> eye_height_m);

}  // namespace understudy
