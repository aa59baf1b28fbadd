// [flash.NAME]: the flash heads that somebody owns, in the scene file or in a file of their own that it names.
#pragma once

#include <filesystem>
#include <vector>

#include "setup/setup.h"
#include "setup/table_reader.h"

namespace understudy {

// Of the scene's own tables, and of the file that "flashes" names, which is looked for beside the scene.
std::vector<FlashHead> read_flashes(TableReader& top, const std::filesystem::path& scene_file,
                                    const std::filesystem::path& kit);

// A light's "flash". None when it names no head, or one that does not exist, which is then in the log.
std::optional<std::size_t> read_flash_choice(TableReader& light, const std::vector<FlashHead>& flashes);

// A "dial" in a head's notation. None when it is missing or wrong; the wrong value is then in the log.
std::optional<int> read_dial_key(TableReader& table, std::string_view key, const Dial& dial);

}  // namespace understudy
