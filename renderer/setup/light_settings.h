// A light of a scene file: its modifier, place, colour and power.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "setup/modifier_settings.h"
#include "setup/placement_settings.h"
#include "setup/power.h"
#include "setup/source_place.h"

namespace understudy {

enum class SourceKind { kFlash, kContinuous };

// What the light's spectrum is: a colour temperature, or a CIE illuminant by name; and what is clipped before it.
struct LightColour {
    double kelvin = 5500.0;
    std::string illuminant;         // "" or a name known to spectrum/illuminant.h, e.g. "FL11"
    std::vector<std::string> gels;  // names known to spectrum/gel.h, one behind the other
};

struct LightSettings {
    std::string name;
    ModifierSettings modifier;
    Placement placement;
    SourceKind source = SourceKind::kFlash;
    LightColour colour;
    std::optional<std::size_t> flash;  // which of the setup's flash heads; none: some flash
    Power power;
    SourcePlace said_at;
};

}  // namespace understudy
