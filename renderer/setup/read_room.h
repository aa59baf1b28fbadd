// [room]
#pragma once

#include "setup/setup.h"
#include "setup/table_reader.h"

namespace understudy {

RoomSettings read_room(TableReader table);

// A backdrop that is larger than the room or stands behind its wall is a problem. backdrop, room: their tables, empty
// where the file has none.
void check_backdrop_fits(const Setup& setup, TableReader& backdrop, TableReader& room);

}  // namespace understudy
