#include "setup/read_backdrop.h"

#include "setup/read_finish.h"

namespace understudy {

BackdropSettings default_backdrop() {
    BackdropSettings backdrop;
    backdrop.surface = Reflectance{0.18};
    return backdrop;
}

std::optional<BackdropSettings> read_backdrop(TableReader table) {
    BackdropSettings backdrop = default_backdrop();
    backdrop.surface = read_finish(table, "surface", Covering::kBackdrop).value_or(backdrop.surface);
    const bool none = table.is_text("surface") && table.text("surface") == "none";
    backdrop.distance_m = table.quantity("distance", kLength, {0.1, 50.0}).value_or(backdrop.distance_m);
    backdrop.width_m = table.quantity("width", kLength, {0.1, 50.0}).value_or(backdrop.width_m);
    backdrop.height_m = table.quantity("height", kLength, {0.1, 20.0}).value_or(backdrop.height_m);
    backdrop.floor = table.truth("floor").value_or(backdrop.floor);
    table.report_unknown_keys();
    return none ? std::nullopt : std::optional(backdrop);
}

}  // namespace understudy
