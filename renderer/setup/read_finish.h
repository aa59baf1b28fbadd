// What a panel or a backdrop is covered with.
#pragma once

#include <optional>

#include "setup/setup.h"
#include "setup/table_reader.h"

namespace understudy {

// may_be_none: "none" is offered among the valid names; the caller has dealt with it.
std::optional<Finish> read_finish(TableReader& table, bool may_be_none);

}  // namespace understudy
