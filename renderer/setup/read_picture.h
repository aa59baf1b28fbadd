// [picture]
#pragma once

#include <optional>
#include <string>

#include "setup/setup.h"
#include "setup/table_reader.h"

namespace understudy {

// "flash", "tungsten", "as-lit" or an illuminant of spectrum/illuminant.h; none for any other word.
std::optional<WhiteBalance> white_balance_named(const std::string& name);

PictureSettings read_picture(TableReader table);

}  // namespace understudy
