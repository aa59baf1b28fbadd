#include "cli/card_gels.h"

#include <sstream>

#include "meter/light_colours.h"
#include "setup/read_gel.h"

namespace understudy {

std::string put_gels(CardLight& light, const std::string& gels) {
    if (light.light == "ambient") return "the room's own light takes no gel";
    LightColour colour = light.colour;
    colour.gels.clear();
    std::istringstream names(gels == "none" ? "" : gels);
    for (std::string name; std::getline(names, name, ',');) {
        std::string complaint = gel_complaint(name);
        if (!complaint.empty()) return complaint;
        colour.gels.push_back(name);
    }
    if ((colour.gels.empty() && gels != "none") || gels.ends_with(','))
        return "expected a gel, several with commas between, or none";
    const double factor = gel_share(colour) / gel_share(light.colour);
    light.colour = colour;
    light.exposure_power *= factor;
    light.own_reading_lxs *= factor;
    light.face_lxs *= factor;
    return "";
}

}  // namespace understudy
