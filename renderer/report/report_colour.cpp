#include "report/report_colour.h"

#include <cmath>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "report/table.h"
#include "report/words.h"

namespace understudy {
namespace {

using Json = nlohmann::ordered_json;

Json number(const std::optional<double>& value) {
    return value && std::isfinite(*value) ? Json(*value) : Json(nullptr);
}

std::string kelvins(const ColourReading& colour) {
    if (!colour.x) return "no light";
    return colour.kelvin ? fmt::format("{} K", plain_number(10.0 * std::round(*colour.kelvin / 10.0), 0)) : "coloured";
}

// Three decimals, and no minus before a nought.
std::string signed_duv(const ColourReading& colour) {
    if (!colour.duv) return "-";
    return fmt::format("{:+.3f}", std::round(1000.0 * *colour.duv) / 1000.0 + 0.0);
}

std::string chromaticity(const ColourReading& colour) {
    return colour.x && colour.y ? plain_number(*colour.x, 3) + ", " + plain_number(*colour.y, 3) : "-";
}

Json json_of(const ColourReading& colour) {
    return {{"light", colour.light},
            {"gels", colour.gels},
            {"gel_loss_stops", number(colour.gel_loss_stops)},
            {"colour_temperature_k", number(colour.kelvin)},
            {"duv", number(colour.duv)},
            {"x", number(colour.x)},
            {"y", number(colour.y)}};
}

}  // namespace

std::string colours_text(const std::vector<ColourReading>& colours) {
    Table table({{"light"},
                 {"gels"},
                 {"gels take", Align::kRight},
                 {"colour", Align::kRight},
                 {"Duv", Align::kRight},
                 {"x, y"}});
    for (const ColourReading& colour : colours) {
        table.add_row({colour.light, colour.gels.empty() ? "-" : fmt::format("{}", fmt::join(colour.gels, " + ")),
                       colour.gels.empty() ? "-" : plain_number(colour.gel_loss_stops, 1) + " stops", kelvins(colour),
                       signed_duv(colour), chromaticity(colour)});
    }
    return "\nColour of each light at the face\n" + table.text() +
           "  Kelvin of the nearest glowing body; Duv, its distance from there: + greener, - pinker; over 0.05 the "
           "light\n"
           "  is a colour and has no temperature. A light's reading is taken with its gels on; joules and lumens are\n"
           "  the head's own.\n";
}

Json colours_json(const std::vector<ColourReading>& colours) {
    Json list = Json::array();
    for (const ColourReading& colour : colours) list.push_back(json_of(colour));
    return list;
}

}  // namespace understudy
