// What a panel, a backdrop or a wall is covered with: a name, a reflectance, or a table.
#pragma once

#include <optional>
#include <string_view>

#include "setup/setup.h"
#include "setup/table_reader.h"

namespace understudy {

// A panel may be a cloth that light goes through, a backdrop may be painted, or "none", which the caller deals with.
enum class Covering { kPanel, kBackdrop, kWall };

// None: the key is missing, or what it says is in the log.
std::optional<Finish> read_finish(TableReader& table, std::string_view key, Covering what);

}  // namespace understudy
