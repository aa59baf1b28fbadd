// What stands around the sitter and only reflects: panels, backdrop, room.
#pragma once

#include <optional>
#include <string>

#include "base/geometry.h"
#include "setup/finish.h"
#include "setup/placement_settings.h"
#include "setup/source_place.h"

namespace understudy {

enum class PanelShape { kRectangle, kDisc };
inline constexpr double kUsualDisc = 1.1;  // metres across

struct PanelSettings {
    std::string name;
    Finish surface;
    PanelShape shape = PanelShape::kRectangle;
    double width_m = 1.0;   // of a disc, its diameter
    double height_m = 1.5;  // of a disc, its diameter
    Placement placement;
    SourcePlace said_at;
};

struct BackdropSettings {
    Finish surface;
    double distance_m = 1.5;  // behind the mark
    double width_m = 2.72;
    double height_m = 2.7;
    bool floor = true;  // swept onto the floor toward the camera
};

struct RoomSettings {
    double ambient_lx = 0.0;
    double ambient_kelvin = 4000.0;
    std::string ambient_illuminant;  // "", or a name known to spectrum/illuminant.h in place of kelvin
    std::optional<Double3> size_m;   // width, depth, height; none: no walls
    Finish walls = Reflectance{0.8};
    Finish ceiling = Reflectance{0.8};
    Finish floor = Reflectance{0.8};
};

}  // namespace understudy
