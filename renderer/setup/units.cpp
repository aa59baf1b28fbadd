#include "setup/units.h"

#include <array>
#include <charconv>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "setup/problem_log.h"

namespace understudy {
namespace {

// The international inch and foot (exact since 1959).
constexpr std::array<Unit, 5> kLengthUnits{{{"m", 1.0}, {"cm", 0.01}, {"mm", 0.001}, {"in", 0.0254}, {"ft", 0.3048}}};
constexpr std::array<Unit, 2> kEnergyUnits{{{"J", 1.0}, {"Ws", 1.0}}};
constexpr std::array<Unit, 1> kFluxUnits{{{"lm", 1.0}}};
// A halogen modelling lamp gives about 16 lm/W (an ordinary 100 W bulb of 120 V: 17, after its maker's figures).
constexpr std::array<Unit, 2> kLampFluxUnits{{{"lm", 1.0}, {"W", 16.0}}};
constexpr std::array<Unit, 1> kIlluminanceUnits{{{"lx", 1.0}}};
constexpr std::array<Unit, 1> kTemperatureUnits{{{"K", 1.0}}};
constexpr std::array<Unit, 1> kShutterUnits{{{"s", 1.0}}};

void skip_blanks(std::string_view& rest) {
    while (!rest.empty() && (rest.front() == ' ' || rest.front() == '\t')) {
        rest.remove_prefix(1);
    }
}

// Takes a number off the front; from_chars does not depend on the locale.
std::optional<double> take_number(std::string_view& rest) {
    skip_blanks(rest);
    double value = 0.0;
    const auto [end, error] = std::from_chars(rest.data(), rest.data() + rest.size(), value);
    if (error != std::errc() || !std::isfinite(value)) {
        return std::nullopt;
    }
    rest.remove_prefix(static_cast<std::size_t>(end - rest.data()));
    return value;
}

std::string_view take_word(std::string_view& rest) {
    skip_blanks(rest);
    std::size_t length = 0;
    while (length < rest.size() && std::string_view(" \t0123456789+-.").find(rest[length]) == std::string_view::npos) {
        ++length;
    }
    const std::string_view word = rest.substr(0, length);
    rest.remove_prefix(length);
    return word;
}

const Unit* unit_named(std::string_view name, const Quantity& quantity) {
    for (const Unit& unit : quantity.units) {
        if (unit.name == name) {
            return &unit;
        }
    }
    return nullptr;
}

std::string unit_names(const Quantity& quantity) {
    std::string names;
    for (const Unit& unit : quantity.units) {
        names += (names.empty() ? "" : ", ") + std::string(unit.name);
    }
    return names;
}

Problem wrong(std::string what, const Quantity& quantity) {
    return {Blame::kWrongInput, fmt::format("{}; expected {}", what, quantity.expected)};
}

}  // namespace

constinit const Quantity kLength{
    R"(a length such as "1.3 m", "130 cm", "51 in" or "4 ft 3 in")", kLengthUnits, {"m", 1.0}};
constinit const Quantity kFilmLength{
    "a length such as \"85 mm\", or a number in millimetres", kLengthUnits, {"mm", 0.001}};
constinit const Quantity kEnergy{R"(an energy such as "120 J" or "120 Ws")", kEnergyUnits, {"J", 1.0}};
constinit const Quantity kLuminousFlux{"a luminous flux such as \"2000 lm\"", kFluxUnits, {"lm", 1.0}};
constinit const Quantity kLampFlux{
    R"(a lamp's light such as "4000 lm", or "250 W" of halogen)", kLampFluxUnits, {"lm", 1.0}};
constinit const Quantity kIlluminance{"an illuminance such as \"200 lx\"", kIlluminanceUnits, {"lx", 1.0}};
constinit const Quantity kTemperature{"a colour temperature such as \"5600 K\"", kTemperatureUnits, {"K", 1.0}};
constinit const Quantity kAngle{"a number of degrees", {}, {"degrees", 1.0}};
constinit const Quantity kStops{"a number of stops", {}, {"stops", 1.0}};
constinit const Quantity kFNumber{"an f-number such as 4.0", {}, {"", 1.0}};
constinit const Quantity kPlainNumber{"a number", {}, {"", 1.0}};
constinit const Quantity kShutter{"a time such as \"1/200\", or a number of seconds", kShutterUnits, {"s", 1.0}};

Expected<double> read_measure(std::string_view text, const Quantity& quantity) {
    if (quantity.units.empty()) {
        return wrong(fmt::format("is the string \"{}\"", shown(text)), quantity);
    }
    std::string_view rest = text;
    const std::optional<double> number = take_number(rest);
    if (!number) {
        return wrong(fmt::format("\"{}\" does not begin with a number", shown(text)), quantity);
    }
    const std::string_view name = take_word(rest);
    const Unit* unit = unit_named(name, quantity);
    if (unit == nullptr) {
        const std::string what =
            name.empty() ? fmt::format("\"{}\" has no unit", shown(text))
                         : fmt::format("\"{}\" is not one of the units {}", shown(name), unit_names(quantity));
        return wrong(what, quantity);
    }
    double value = *number * unit->in_si;
    skip_blanks(rest);
    if (unit->name == "ft" && !rest.empty()) {
        const std::optional<double> inches = take_number(rest);
        const std::string_view second = take_word(rest);
        if (!inches || second != "in" || *inches < 0.0 || *inches >= 12.0) {
            return wrong(fmt::format("\"{}\" does not go on with less than 12 in", shown(text)), quantity);
        }
        value += std::copysign(*inches * 0.0254, value);
        skip_blanks(rest);
    }
    if (!rest.empty()) {
        return wrong(fmt::format(R"("{}" goes on with "{}")", shown(text), shown(rest)), quantity);
    }
    return value;
}

Expected<double> read_shutter(std::string_view text) {
    const Problem not_a_time = wrong(fmt::format("\"{}\" is not a time", shown(text)), kShutter);
    std::string_view rest = text;
    const std::optional<double> over = take_number(rest);
    if (!over) {
        return not_a_time;
    }
    double value = *over;
    skip_blanks(rest);
    if (!rest.empty() && rest.front() == '/') {
        rest.remove_prefix(1);
        const std::optional<double> under = take_number(rest);
        if (!under || *under <= 0.0) {
            return not_a_time;
        }
        value /= *under;
    }
    const std::string_view unit = take_word(rest);
    skip_blanks(rest);
    if (!rest.empty() || !(unit.empty() || unit == "s")) {
        return not_a_time;
    }
    return value;
}

std::string show_measure(double si_value, const Quantity& quantity) {
    const std::string number = fmt::format("{:.6g}", si_value / quantity.bare.in_si);
    return quantity.bare.name.empty() ? number : fmt::format("{} {}", number, quantity.bare.name);
}

}  // namespace understudy
