#include "setup/read_panel.h"

#include <fmt/format.h>

#include "setup/read_finish.h"
#include "setup/read_placement.h"
#include "setup/usual_names.h"

namespace understudy {
namespace {

constexpr Range kSize{0.01, 20.0};

void read_size(TableReader& table, PanelSettings& panel) {
    panel.shape =
        table.choice<PanelShape>("shape", {{"rectangle", PanelShape::kRectangle}, {"disc", PanelShape::kDisc}})
            .value_or(PanelShape::kRectangle);
    const bool round = panel.shape == PanelShape::kDisc;
    const std::string_view strange = round ? "size" : "diameter";
    if (table.has(strange)) {
        table.log().add(table.key_place_of(strange),
                        fmt::format("{} is a {}, which has no {}", table.name(), round ? "disc" : "rectangle", strange),
                        round ? "diameter" : "size = [width, height], or shape = \"disc\"");
    }
    if (const auto size = table.quantities("size", 2, kLength, kSize); size && !round) {
        panel.width_m = (*size)[0];
        panel.height_m = (*size)[1];
    }
    const double diameter = table.quantity("diameter", kLength, kSize).value_or(kUsualDisc);
    if (round) panel.width_m = panel.height_m = diameter;
}

// A table-top reflector: below the picture's edge, before the chest, and tipped toward the face by 20° from lying flat,
// which is where it points when it aims half a metre over the eyes. Common practice, no source.
Placement read_under_chin(TableReader& table, std::optional<double> eye_height_m) {
    PlacementDefaults under_chin{0.0, std::nullopt, 0.65};
    under_chin.elevation_deg = -55.0;
    Placement placement = read_placement(table, under_chin, eye_height_m);
    if (!table.has("aim")) {
        placement.aim = {Aim::Target::kPoint, Double3(0.0, eye_height_m.value_or(0.0) + 0.5, 0.0)};
    }
    return placement;
}

}  // namespace

PanelSettings read_panel(TableReader table, int number, std::optional<double> eye_height_m) {
    PanelSettings panel;
    panel.said_at = table.place();
    panel.name = table.text("name").value_or(usual_panel_name(number));
    if (panel.name.empty()) {
        table.wrong("name", "is empty", "a name");
    }
    panel.surface = read_finish(table, "surface", Covering::kPanel).value_or(Reflectance{0.9});
    read_size(table, panel);
    const bool under_chin = table.choice<bool>("place", {{"under-chin", true}}).value_or(false);
    panel.placement =
        under_chin ? read_under_chin(table, eye_height_m) : read_placement(table, {70.0, 1.3, 0.9}, eye_height_m);
    table.report_unknown_keys();
    return panel;
}

}  // namespace understudy
