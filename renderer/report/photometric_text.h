// What a photometric file holds, in words, numbers and a drawing of 80 columns.
#pragma once

#include <string>

#include "setup/photometric_file.h"

namespace understudy {

std::string photometric_text(const PhotometricFile& file);

}  // namespace understudy
