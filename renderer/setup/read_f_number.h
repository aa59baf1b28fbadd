// A key that is an f-number: a number as marked on a lens, or a string as a meter shows it.
#pragma once

#include <optional>
#include <string_view>

#include "setup/table_reader.h"

namespace understudy {

// Exact: 5.6 gives 5.657.
std::optional<double> read_f_number(TableReader& table, std::string_view key, Range range);

}  // namespace understudy
