// A length that a modifier's shape cannot do without.
#pragma once

#include <optional>
#include <string_view>

#include "setup/table_reader.h"

namespace understudy {

inline constexpr Range kModifierSize{0.005, 10.0};

// The value of a key that has to be there; none, with a problem, when it is not.
std::optional<double> needed_length(TableReader& table, std::string_view key, std::string_view shape);

}  // namespace understudy
