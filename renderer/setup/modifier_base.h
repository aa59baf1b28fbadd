// A modifier that is another one but for some of its keys.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "setup/table_reader.h"

namespace understudy {

// The keys of a kit file, with those of the files that it is based on. A name that is not in the kit is told at `at` as
// the value of `key` in `asking`.
std::optional<Value> kit_modifier_keys(TableReader& asking, std::string_view key, const std::string& name,
                                       const std::filesystem::path& kit);

// `base = "…"` replaced by that modifier's keys, over which the table's own are laid; a table in a table is laid over
// its namesake key by key. A table without a base stays as it is.
std::optional<Value> with_base(const Value& table, const std::string& called, ProblemLog& log,
                               const std::filesystem::path& kit);

}  // namespace understudy
