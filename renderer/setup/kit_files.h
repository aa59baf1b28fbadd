// The names that the library offers: a folder's *.toml files.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/expected.h"

namespace understudy {

// The stems of the folder's *.toml files, sorted. Empty if there is no such folder.
std::vector<std::string> toml_names_in(const std::filesystem::path& folder);

// A text file as a whole. A folder, a missing and an unreadable file are the person's problem to mend.
Expected<std::string> read_text_file(const std::filesystem::path& file);

}  // namespace understudy
