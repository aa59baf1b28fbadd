#include "setup/read_light.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "setup/read_colour.h"
#include "setup/read_gel.h"
#include "setup/read_modifier.h"
#include "setup/read_placement.h"

namespace understudy {
namespace {

constexpr std::array<std::string_view, 4> kPowerKeys{"meter", "energy", "lumens", "from_key"};
constexpr PlacementDefaults kLightDefaults{-60.0, 1.7, 1.3, false};

std::string read_name(TableReader& table, int number) {
    std::string name = table.text("name").value_or(number == 1 ? "key" : fmt::format("light-{}", number));
    if (name.empty()) {
        table.wrong("name", "is empty", "a name");
    }
    if (name == "ambient" || name == "camera") {
        table.wrong("name", fmt::format("is \"{}\"", name), "another name: this one is taken by the room or the gaze");
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

// Energy is a flash's and lumens are a lamp's, so a source that is not said follows from them.
SourceKind read_source(TableReader& table) {
    const std::optional<SourceKind> said =
        table.choice<SourceKind>("source", {{"flash", SourceKind::kFlash}, {"continuous", SourceKind::kContinuous}});
    if (said == SourceKind::kFlash && table.has("lumens")) {
        table.log().add(table.key_place_of("lumens"), table.name() + " is a flash with lumens",
                        "energy, or source = \"continuous\"");
    }
    if (said == SourceKind::kContinuous && table.has("energy")) {
        table.log().add(table.key_place_of("energy"), table.name() + " is a continuous light with energy",
                        "lumens, or source = \"flash\"");
    }
    return said.value_or(table.has("lumens") ? SourceKind::kContinuous : SourceKind::kFlash);
}

// The keys are exclusive; each is still read, so that its own mistakes are told too.
Power read_power(TableReader& table, int number) {
    const std::optional<double> meter = table.quantity("meter", kFNumber, {0.1, 512.0});
    const std::optional<double> energy = table.quantity("energy", kEnergy, {0.01, 1e5});
    const std::optional<double> lumens = table.quantity("lumens", kLuminousFlux, {0.01, 1e7});
    const std::optional<double> from_key = table.quantity("from_key", kStops, {-20.0, 20.0});
    std::vector<std::string_view> said;
    std::copy_if(kPowerKeys.begin(), kPowerKeys.end(), std::back_inserter(said),
                 [&](std::string_view key) { return table.has(key); });
    if (said.size() > 1) {
        table.log().add(table.key_place_of(said[1]),
                        fmt::format("{} has its power twice: {}", table.name(), fmt::join(said, ", ")),
                        "exactly one of meter, energy, lumens, from_key");
    }
    if (number == 1 && said.empty()) {
        table.log().add(table.place(), table.name() + ", the key, has no power", "one of meter, energy, lumens");
    }
    if (number == 1 && table.has("from_key")) {
        table.log().add(table.key_place_of("from_key"), table.name() + " has from_key but is the key itself",
                        "one of meter, energy, lumens");
    }
    if (meter) {
        return PowerFromMeter{*meter};
    }
    if (energy) {
        return PowerFromEnergy{*energy};
    }
    if (lumens) {
        return PowerFromFlux{*lumens};
    }
    return PowerFromKey{from_key.value_or(-1.5)};
}

}  // namespace

LightSettings read_light(TableReader table, int number, const std::filesystem::path& kit,
                         std::optional<double> eye_height_m) {
    LightSettings light;
    light.said_at = table.place();
    light.name = read_name(table, number);
    light.modifier = read_modifier(table, kit).value_or(ModifierSettings{});
    light.placement = read_placement(table, kLightDefaults, eye_height_m);
    light.source = read_source(table);
    light.colour = read_colour(table);
    light.power = read_power(table, number);
    table.report_unknown_keys();
    return light;
}

}  // namespace understudy
