#include "setup/read_light.h"

#include <algorithm>

#include <fmt/format.h>

#include "setup/read_colour.h"
#include "setup/read_flash.h"
#include "setup/read_gel.h"
#include "setup/read_modifier.h"
#include "setup/read_placement.h"
#include "setup/read_power.h"
#include "setup/usual_names.h"

namespace understudy {
namespace {

constexpr PlacementDefaults kLightDefaults{-60.0, 1.7, 1.3, false};

std::string read_name(TableReader& table, int number) {
    std::string name = table.text("name").value_or(usual_light_name(number));
    if (name.empty()) {
        table.wrong("name", "is empty", "a name");
    }
    if (name == "ambient" || name == "camera") {
        table.wrong("name", fmt::format("is \"{}\"", name), "another name: this one is taken by the room or the gaze");
    }
    if (name == "albedo" || name == "normal" || name == "depth" || name.starts_with("feature ")) {
        table.wrong("name", fmt::format("is \"{}\"", shown(name)),
                    "another name: this one is taken by a layer of the EXR file");
    }
    return name;
}

LightColour read_colour(TableReader& table) {
    LightColour colour;
    colour.kelvin = table.quantity("colour_temperature", kTemperature, kColourTemperatures).value_or(colour.kelvin);
    colour.illuminant = read_illuminant(table, "spectrum", "colour_temperature");
    colour.gels = read_gels(table);
    return colour;
}

}  // namespace

LightSettings read_light(TableReader table, int number, const std::filesystem::path& kit,
                         const std::vector<FlashHead>& flashes, std::optional<double> eye_height_m) {
    LightSettings light;
    light.said_at = table.place();
    light.name = read_name(table, number);
    const std::optional<ModifierSettings> modifier = read_modifier(table, kit);
    light.modifier = modifier.value_or(ModifierSettings{});
    light.placement = read_placement(table, kLightDefaults, eye_height_m);
    light.source = read_source(table, std::holds_alternative<WindowShape>(light.modifier.shape));
    light.colour = read_colour(table);
    light.flash = read_flash_choice(table, flashes);
    light.power = read_power(table, number, light.flash ? &flashes[*light.flash] : nullptr);
    if (modifier && !modifier->photometric && std::holds_alternative<PowerOfFile>(light.power)) {
        table.wrong("lumens", "is \"as file\", but no photometric file is named",
                    "a luminous flux, or a modifier with photometric");
    }
    table.report_unknown_keys();
    return light;
}

}  // namespace understudy
