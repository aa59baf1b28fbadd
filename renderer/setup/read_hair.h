// hair, beard and brows of [sitter].
#pragma once

#include "setup/hair_settings.h"
#include "setup/table_reader.h"

namespace understudy {

HairSettings read_hair(TableReader& sitter);

}  // namespace understudy
