// From a scene file to a checked setup.
#pragma once

#include <filesystem>
#include <string>

#include "base/expected.h"
#include "setup/setup.h"

namespace understudy {

// Reads and checks a scene file. All problems of the file are returned in one go, each with its line and column.
Expected<Setup> read_setup(const std::filesystem::path& scene_file, const Library& library);

// The same for text already in memory; file is only used in messages and for paths relative to it.
Expected<Setup> parse_setup(const std::string& text, const std::filesystem::path& file, const Library& library);

}  // namespace understudy
