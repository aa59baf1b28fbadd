// Umbrellas, frames of cloth and windows.
#pragma once

#include <optional>

#include "setup/setup.h"
#include "setup/table_reader.h"

namespace understudy {

std::optional<ModifierShape> read_umbrella(TableReader& table);
std::optional<ModifierShape> read_frame(TableReader& table);
std::optional<ModifierShape> read_window(TableReader& table);

// Whether a shape's own head or sky says how much light there is, so that an efficiency would contradict it.
bool works_out_its_light(const ModifierShape& shape);

}  // namespace understudy
