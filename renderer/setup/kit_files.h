// The names that the library offers: a folder's *.toml files.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "base/expected.h"

namespace understudy {

// The stems of the folder's *.toml files, sorted. Empty if there is no such folder.
std::vector<std::string> toml_names_in(const std::filesystem::path& folder);

// Far more than any scene; keeps an endless device from being read for ever.
inline constexpr std::size_t kMostTextBytes = std::size_t{1} << 20U;

// A text file as a whole, or a little more than most_bytes of it. A folder, a missing and an unreadable file are the
// person's problem to mend; expected: what messages say the file should have been.
Expected<std::string> read_text_file(const std::filesystem::path& file,
                                     std::string_view expected = "a readable TOML file",
                                     std::size_t most_bytes = kMostTextBytes);

}  // namespace understudy
