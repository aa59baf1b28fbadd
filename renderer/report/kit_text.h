// The light kit in words: a table of all its modifiers, and one of them described.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "setup/setup.h"

namespace understudy {

// A modifier's figures as the kit's table has them.
struct KitFigures {
    std::string name;
    ModifierShape shape;
    std::optional<double> opening_deg;  // full angle at half the axial intensity; none: it never falls so low
    // On the axis at 1 m, over the bare bulb; none of a window, behind which there is no tube.
    std::optional<double> output_stops;
    std::optional<double> hot_spot_stops;  // from the front's middle to its edge
};

std::string kit_text(const std::vector<KitFigures>& kit);

struct KitIntensity {
    double angle_deg = 0.0;
    double stops = 0.0;  // below the axial intensity; infinity: dark
};

std::string kit_modifier_text(const KitFigures& figures, const ModifierSettings& settings, double efficiency,
                              const std::vector<KitIntensity>& intensities);

}  // namespace understudy
