#include "setup/read_panel.h"

#include <fmt/format.h>

#include "setup/read_finish.h"
#include "setup/read_placement.h"

namespace understudy {

PanelSettings read_panel(TableReader table, int number, std::optional<double> eye_height_m) {
    PanelSettings panel;
    panel.said_at = table.place();
    panel.name = table.text("name").value_or(number == 1 ? "fill card" : fmt::format("panel-{}", number));
    if (panel.name.empty()) {
        table.wrong("name", "is empty", "a name");
    }
    panel.surface = read_finish(table, false).value_or(Reflectance{0.9});
    if (const auto size = table.quantities("size", 2, kLength, {0.01, 20.0})) {
        panel.width_m = (*size)[0];
        panel.height_m = (*size)[1];
    }
    panel.placement = read_placement(table, {70.0, 1.3, 0.9, false}, eye_height_m);
    table.report_unknown_keys();
    return panel;
}

}  // namespace understudy
