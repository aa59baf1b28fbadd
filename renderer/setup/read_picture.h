// [picture]
#pragma once

#include "setup/setup.h"
#include "setup/table_reader.h"

namespace understudy {

// What lights and white balance may have, in kelvin.
inline constexpr Range kColourTemperatures{1000.0, 25000.0};

PictureSettings read_picture(TableReader table);

}  // namespace understudy
