// [[light]]
#pragma once

#include <filesystem>
#include <vector>

#include "setup/setup.h"
#include "setup/table_reader.h"

namespace understudy {

// number: 1 for the first light of the file, the key.
LightSettings read_light(TableReader table, int number, const std::filesystem::path& kit,
                         const std::vector<FlashHead>& flashes, std::optional<double> eye_height_m);

}  // namespace understudy
