// A light's modifier: by the name of the kit, or a table of one's own.
#pragma once

#include <filesystem>
#include <optional>

#include "setup/setup.h"
#include "setup/table_reader.h"

namespace understudy {

std::optional<ModifierSettings> read_modifier(TableReader& light, const std::filesystem::path& kit);

}  // namespace understudy
