#include "setup/needed_length.h"

#include <fmt/format.h>

namespace understudy {

std::optional<double> needed_length(TableReader& table, std::string_view key, std::string_view shape) {
    if (!table.has(key)) {
        table.find(key);
        table.log().add(table.place(), fmt::format("{} of shape \"{}\" has no {}", table.name(), shape, key),
                        fmt::format("{} = a length", key));
        return std::nullopt;
    }
    return table.quantity(key, kLength, kModifierSize);
}

}  // namespace understudy
