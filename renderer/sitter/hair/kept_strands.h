// Strands that are grown once for a sitter and kept.
#pragma once

#include <filesystem>

#include "sitter/hair/grow_strands.h"

namespace understudy {

// As grow_strands, from the folder when they have been grown there before, by this program for this very mesh. An empty
// folder keeps nothing.
Strands kept_strands(const Sitter& sitter, const StrandDetail& detail, const std::filesystem::path& folder);

}  // namespace understudy
