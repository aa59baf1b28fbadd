// [sitter] clothes, glasses, hat: a name, or a table.
#pragma once

#include "setup/sitter_settings.h"
#include "setup/table_reader.h"

namespace understudy {

// Each as it is said, or as it usually is when the key is missing or wrong (the log then has it).
ClothesSettings read_clothes(TableReader& sitter);
// None: not worn.
std::optional<GlassesSettings> read_glasses(TableReader& sitter);
std::optional<HatSettings> read_hat(TableReader& sitter);

}  // namespace understudy
