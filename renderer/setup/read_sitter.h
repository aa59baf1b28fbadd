// [sitter]
#pragma once

#include "setup/setup.h"
#include "setup/table_reader.h"

namespace understudy {

// The eye height by itself, which stands are checked against. None if it is wrong, which read_sitter() reports.
std::optional<double> peek_eye_height(const TableReader& table);

SitterSettings read_sitter(TableReader table, const Library& library, const std::filesystem::path& scene_file);

}  // namespace understudy
