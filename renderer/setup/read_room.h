// [room]
#pragma once

#include "setup/setup.h"
#include "setup/table_reader.h"

namespace understudy {

RoomSettings read_room(TableReader table);

}  // namespace understudy
