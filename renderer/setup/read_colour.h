// The colour of a light of its own: kelvin, or an illuminant by name; for lights, the room and the white balance.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "setup/table_reader.h"

namespace understudy {

// What lights and white balance may have, in kelvin.
inline constexpr Range kColourTemperatures{1000.0, 25000.0};

// The name under key, which spectrum/illuminant.h must know; "" without the key. A table with the temperature too is a
// contradiction.
std::string read_illuminant(TableReader& table, std::string_view key, std::string_view temperature_key);

}  // namespace understudy
