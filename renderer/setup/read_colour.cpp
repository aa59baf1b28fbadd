#include "setup/read_colour.h"

#include <algorithm>

#include <fmt/format.h>

#include "spectrum/illuminant.h"

namespace understudy {

std::string read_illuminant(TableReader& table, std::string_view key, std::string_view temperature_key) {
    const std::optional<std::string> name = table.text(key);
    if (table.has(key) && table.has(temperature_key)) {
        table.log().add(table.key_place_of(key),
                        fmt::format("{} has both {} and {}", table.name(), temperature_key, key),
                        "only one of the two");
    }
    if (!name) return "";
    const std::vector<std::string> valid = cie_illuminant_names();
    if (std::find(valid.begin(), valid.end(), *name) == valid.end()) table.unknown_name(key, *name, valid);
    return *name;
}

}  // namespace understudy
