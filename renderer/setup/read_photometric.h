// The photometric file of a modifier: modifier = { photometric = "spot.ies" }.
#pragma once

#include <memory>

#include "setup/photometric_file.h"
#include "setup/table_reader.h"

namespace understudy {

// None when the table names no file, or one that cannot be used, which is then in the log. A path that is not absolute
// starts from the folder of the file that the table is in.
std::shared_ptr<const PhotometricFile> read_photometric(TableReader& modifier);

}  // namespace understudy
