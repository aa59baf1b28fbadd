// [backdrop]
#pragma once

#include <optional>

#include "setup/setup.h"
#include "setup/table_reader.h"

namespace understudy {

// What stands there when the file says nothing.
BackdropSettings default_backdrop();

// None: surface = "none".
std::optional<BackdropSettings> read_backdrop(TableReader table);

}  // namespace understudy
