// What a modifier is built of: its keys `body`, `depth`, `back`, `walls`, `tube`, `deflector`, `inner_cloth`,
// `front_cloth` and `grid`.
#pragma once

#include <optional>

#include "setup/setup.h"
#include "setup/table_reader.h"

namespace understudy {

// The table has the key `body`. Problems are in the log, also those of parts that contradict each other.
std::optional<Construction> read_construction(TableReader& table, const ModifierShape& front);

}  // namespace understudy
