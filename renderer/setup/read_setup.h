// From a scene file to a checked setup.
#pragma once

#include <filesystem>
#include <string>

#include "base/expected.h"
#include "setup/setup.h"
#include "setup/toml_tree.h"

namespace understudy {

// Reads and checks a scene file. All problems of the file are returned in one go, each with its line and column.
Expected<Setup> read_setup(const std::filesystem::path& scene_file, const Library& library);

// The same for text already in memory; file is only used in messages and for paths relative to it.
Expected<Setup> parse_setup(const std::string& text, const std::filesystem::path& file, const Library& library);

// The same for a document already parsed; text is what it was parsed from.
Expected<Setup> setup_of_tree(const Value& tree, const std::string& text, const std::filesystem::path& file,
                              const Library& library);

}  // namespace understudy
