#include "setup/read_room.h"

#include "setup/read_colour.h"

namespace understudy {

RoomSettings read_room(TableReader table) {
    RoomSettings room;
    room.ambient_lx = table.quantity("ambient", kIlluminance, {0.0, 200000.0}).value_or(room.ambient_lx);
    room.ambient_kelvin =
        table.quantity("ambient_temperature", kTemperature, kColourTemperatures).value_or(room.ambient_kelvin);
    room.ambient_illuminant = read_illuminant(table, "ambient_spectrum", "ambient_temperature");
    room.size_m = table.point("size", kLength, {1.0, 100.0});
    room.walls = table.quantity("walls", kPlainNumber, {0.0, 0.98}).value_or(room.walls);
    if (table.has("walls") && !table.has("size")) {
        table.log().add(table.key_place_of("walls"), "[room] has walls without a size",
                        "size = [width, depth, height]");
    }
    table.report_unknown_keys();
    return room;
}

}  // namespace understudy
