// Traced modifiers kept in files, so that each is traced once.
//
// A file is named by the hash of what was traced and holds all of it, so that another modifier is never taken for it,
// and ends in a seal over its bytes: what is damaged, foreign or of another version counts as not there.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "kit/trace_emission.h"

namespace understudy {

// What the table depends on, as text.
std::string emission_key(const Construction& construction, const ModifierShape& front);

std::filesystem::path emission_file(const std::filesystem::path& folder, const std::string& key);

std::optional<TracedEmission> read_emission(const std::filesystem::path& file, const std::string& key);

// Beside the file first, then renamed: nobody finds half of it. What stood in the way, or nothing.
std::string write_emission(const std::filesystem::path& file, const std::string& key, const TracedEmission& traced);

}  // namespace understudy
