#include "setup/read_power.h"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "setup/read_f_number.h"
#include "setup/read_flash.h"

namespace understudy {
namespace {

constexpr std::array<std::string_view, 6> kPowerKeys{"meter", "energy", "lumens", "lux", "dial", "from_key"};
constexpr const char* kKeyPowers = "one of meter, energy, lumens, lux, dial";

// What only a flash has, and what only a lamp has that is always on.
constexpr std::array<std::string_view, 3> kFlashKeys{"energy", "flash", "dial"};
constexpr std::array<std::string_view, 2> kLampKeys{"lumens", "lux"};

template <std::size_t kCount>
std::string_view first_of(const TableReader& table, const std::array<std::string_view, kCount>& keys) {
    const auto found = std::find_if(keys.begin(), keys.end(), [&](std::string_view key) { return table.has(key); });
    return found == keys.end() ? std::string_view() : *found;
}

void check_number_of_powers(TableReader& table, int number) {
    std::vector<std::string_view> said;
    std::copy_if(kPowerKeys.begin(), kPowerKeys.end(), std::back_inserter(said),
                 [&](std::string_view key) { return table.has(key); });
    if (said.size() > 1) {
        table.log().add(table.key_place_of(said[1]),
                        fmt::format("{} has its power twice: {}", table.name(), fmt::join(said, ", ")),
                        fmt::format("exactly one of {}", fmt::join(kPowerKeys, ", ")));
    }
    if (number == 1 && said.empty()) {
        table.log().add(table.place(), table.name() + ", the key, has no power", kKeyPowers);
    }
    if (number == 1 && table.has("from_key")) {
        table.log().add(table.key_place_of("from_key"), table.name() + " has from_key but is the key itself",
                        kKeyPowers);
    }
}

// The candela of a photometric file as they are.
bool is_as_file(TableReader& table) { return table.is_text("lumens") && table.text("lumens") == "as file"; }

std::optional<int> read_dial_power(TableReader& table, const FlashHead* head) {
    if (head != nullptr) return read_dial_key(table, "dial", head->dial);
    table.find("dial");
    if (table.has("dial") && !table.has("flash")) {
        table.log().add(table.key_place_of("dial"), table.name() + " has a dial but no flash",
                        "flash = the name of a [flash.NAME] table, whose notation the dial is in");
    }
    return std::nullopt;
}

}  // namespace

SourceKind read_source(TableReader& table, bool window) {
    const std::optional<SourceKind> said =
        table.choice<SourceKind>("source", {{"flash", SourceKind::kFlash}, {"continuous", SourceKind::kContinuous}});
    const std::string_view of_flash = first_of(table, kFlashKeys);
    const std::string_view of_lamp = first_of(table, kLampKeys);
    if (said == SourceKind::kFlash && !of_lamp.empty()) {
        table.log().add(table.key_place_of(of_lamp), fmt::format("{} is a flash with {}", table.name(), of_lamp),
                        "energy, or source = \"continuous\"");
    }
    if (said == SourceKind::kContinuous && !of_flash.empty()) {
        table.log().add(table.key_place_of(of_flash),
                        fmt::format("{} is a continuous light with {}", table.name(), of_flash),
                        "lumens, or source = \"flash\"");
    }
    if (!said && table.has("flash") && !of_lamp.empty()) {
        table.log().add(table.key_place_of(of_lamp), fmt::format("{} is a flash with {}", table.name(), of_lamp),
                        "energy, dial, meter or from_key");
    }
    if (window && (said == SourceKind::kFlash || (!said && !of_flash.empty()))) {
        table.log().add(table.key_place_of(said ? "source" : of_flash), table.name() + " is a window as a flash",
                        "source = \"continuous\", its power as meter, lumens, lux or from_key");
    }
    return said.value_or(of_lamp.empty() && !window ? SourceKind::kFlash : SourceKind::kContinuous);
}

// The keys are exclusive; each is still read, so that its own mistakes are told too.
Power read_power(TableReader& table, int number, const FlashHead* head) {
    const std::optional<double> meter = read_f_number(table, "meter", {0.1, 512.0});
    const std::optional<double> energy = table.quantity("energy", kEnergy, {0.01, 1e5});
    const bool as_file = is_as_file(table);
    const std::optional<double> lumens = as_file ? std::nullopt : table.quantity("lumens", kLuminousFlux, {0.01, 1e7});
    const std::optional<double> lux = table.quantity("lux", kIlluminance, {0.01, 1e6});
    const std::optional<int> dial = read_dial_power(table, head);
    const std::optional<double> from_key = table.quantity("from_key", kStops, {-20.0, 20.0});
    check_number_of_powers(table, number);
    if (meter) return PowerFromMeter{*meter};
    if (energy) return PowerFromEnergy{*energy};
    if (lumens) return PowerFromFlux{*lumens};
    if (as_file) return PowerOfFile{};
    if (lux) return PowerFromIlluminance{*lux};
    if (dial) return PowerFromDial{*dial};
    return PowerFromKey{from_key.value_or(-1.5)};
}

}  // namespace understudy
