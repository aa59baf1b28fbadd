#include "setup/read_room.h"

#include <fmt/format.h>

#include "setup/read_colour.h"
#include "setup/read_finish.h"

namespace understudy {

RoomSettings read_room(TableReader table) {
    RoomSettings room;
    room.ambient_lx = table.quantity("ambient", kIlluminance, {0.0, 200000.0}).value_or(room.ambient_lx);
    room.ambient_kelvin =
        table.quantity("ambient_temperature", kTemperature, kColourTemperatures).value_or(room.ambient_kelvin);
    room.ambient_illuminant = read_illuminant(table, "ambient_spectrum", "ambient_temperature");
    room.size_m = table.point("size", kLength, {1.0, 100.0});
    room.walls = read_finish(table, "walls", Covering::kWall).value_or(room.walls);
    room.ceiling = read_finish(table, "ceiling", Covering::kWall).value_or(room.walls);
    room.floor = read_finish(table, "floor", Covering::kWall).value_or(room.walls);
    for (const std::string_view key : {"walls", "ceiling", "floor"}) {
        if (table.has(key) && !table.has("size")) {
            table.log().add(table.key_place_of(key), fmt::format("[room] has {} without a size", key),
                            "size = [width, depth, height]");
        }
    }
    table.report_unknown_keys();
    return room;
}

void check_backdrop_fits(const Setup& setup, TableReader& backdrop, TableReader& room) {
    if (!setup.backdrop || !setup.room.size_m) return;
    const Double3& size = *setup.room.size_m;
    const auto check = [&](std::string_view key, double value_m, double most_m, std::string_view what) {
        if (value_m <= most_m + 1e-9) return;
        const std::string problem =
            fmt::format("the backdrop's {} of {:.4g} m does not go into a room {}", key, value_m, what);
        // Whichever of the two tables says it.
        const bool said = backdrop.has(key);
        const SourcePlace place = said ? backdrop.place_of(key) : room.place_of("size");
        room.log().add(place, fmt::format("[{}] {}: {}", said ? "backdrop" : "room", said ? key : "size", problem),
                       fmt::format("[backdrop] {} of at most {:.4g} m", key, most_m));
    };
    check("distance", setup.backdrop->distance_m, 0.5 * size.y,
          fmt::format("whose back wall is {:.4g} m behind the mark", 0.5 * size.y));
    check("width", setup.backdrop->width_m, size.x, fmt::format("{:.4g} m wide", size.x));
    check("height", setup.backdrop->height_m, size.z, fmt::format("{:.4g} m high", size.z));
}

}  // namespace understudy
