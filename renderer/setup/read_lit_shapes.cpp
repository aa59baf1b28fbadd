#include "setup/read_lit_shapes.h"

#include <algorithm>

#include <fmt/format.h>

#include "setup/needed_length.h"

namespace understudy {
namespace {

// Common practice, no source: an 18 cm reflector of about 70 degrees that lets out three quarters of the tube's light,
// on the shaft where its beam just fills the canopy.
constexpr double kBeam = 70.0;
constexpr double kHeadEfficiency = 0.75;
constexpr double kHeadDiameter = 0.18;
constexpr double kDepthOfDiameter = 0.25;
constexpr double kHeadOfDiameter = 0.6;
constexpr double kFrameTransmission = 0.5;

ClothHead read_head(TableReader& table, std::optional<double> distance_m) {
    ClothHead head;
    head.distance_m = distance_m.value_or(1.0);
    head.beam_deg = table.quantity("beam", kAngle, {5.0, 160.0}).value_or(kBeam);
    head.efficiency = table.quantity("head_efficiency", kPlainNumber, {0.01, 1.0}).value_or(kHeadEfficiency);
    return head;
}

}  // namespace

std::optional<ModifierShape> read_umbrella(TableReader& table) {
    using Kind = UmbrellaShape::Cloth;
    if (!table.has("cloth")) {
        table.log().add(table.place(), table.name() + R"( of shape "umbrella" has no cloth)",
                        R"(cloth = "white", "silver" or "through")");
    }
    const std::optional<Kind> cloth =
        table.choice<Kind>("cloth", {{"white", Kind::kWhite}, {"silver", Kind::kSilver}, {"through", Kind::kThrough}});
    const std::optional<double> diameter = needed_length(table, "diameter", "umbrella");
    const std::optional<double> said_depth = table.quantity("depth", kLength, kModifierSize);
    const std::optional<double> said_head = table.quantity("head", kLength, kModifierSize);
    const ClothHead rest = read_head(table, std::nullopt);
    const double head_diameter = table.quantity("head_diameter", kLength, {0.01, 1.0}).value_or(kHeadDiameter);
    if (!cloth || !diameter) {
        return std::nullopt;
    }
    const double depth = said_depth.value_or(kDepthOfDiameter * *diameter);
    if (depth > *diameter / 2.0) {
        table.wrong("depth", "is " + show_measure(depth, kLength),
                    "at most half the diameter, " + show_measure(*diameter / 2.0, kLength));
        return std::nullopt;
    }
    ClothHead head = rest;
    head.distance_m = said_head.value_or(kHeadOfDiameter * *diameter);
    const double radius = (*diameter * *diameter / 4.0 + depth * depth) / (2.0 * depth);  // of the canopy's ball
    const bool in_the_way = *cloth != Kind::kThrough && head.distance_m < depth;
    if (in_the_way || head.distance_m >= 2.0 * radius) {
        table.wrong("head", "is " + show_measure(head.distance_m, kLength) + " from the canopy's middle",
                    fmt::format("the head outside the canopy and where it lights all of it, from {} to less than {}",
                                show_measure(depth, kLength), show_measure(2.0 * radius, kLength)));
        return std::nullopt;
    }
    return UmbrellaShape{*diameter, depth, *cloth, head, head_diameter};
}

std::optional<ModifierShape> read_frame(TableReader& table) {
    const std::optional<double> width = needed_length(table, "width", "frame");
    const std::optional<double> height = needed_length(table, "height", "frame");
    const std::optional<double> distance = needed_length(table, "head", "frame");
    const ClothHead head = read_head(table, distance);
    const double transmission = table.quantity("transmission", kPlainNumber, {0.05, 0.95}).value_or(kFrameTransmission);
    if (!width || !height || !distance) {
        return std::nullopt;
    }
    return FrameShape{*width, *height, head, transmission};
}

std::optional<ModifierShape> read_window(TableReader& table) {
    const std::optional<double> width = needed_length(table, "width", "window");
    const std::optional<double> height = needed_length(table, "height", "window");
    WindowShape window;
    window.columns = static_cast<int>(table.whole("columns", 1, 20).value_or(1));
    window.rows = static_cast<int>(table.whole("rows", 1, 20).value_or(1));
    window.bar_m = table.quantity("bar", kLength, {0.0, 1.0}).value_or(0.05);
    window.curtain = table.quantity("curtain", kPlainNumber, {0.0, 1.0}).value_or(0.0);
    window.ground = table.quantity("ground", kPlainNumber, {0.0, 0.98}).value_or(0.2);
    if (!width || !height) {
        return std::nullopt;
    }
    window.width_m = *width;
    window.height_m = *height;
    const double most = std::min(*width / (window.columns + 1), *height / (window.rows + 1));
    if (window.bar_m >= most) {
        table.wrong("bar", "is " + show_measure(window.bar_m, kLength),
                    "less than " + show_measure(most, kLength) + ", or no glass is left");
        return std::nullopt;
    }
    return window;
}

bool works_out_its_light(const ModifierShape& shape) {
    return std::holds_alternative<UmbrellaShape>(shape) || std::holds_alternative<FrameShape>(shape) ||
           std::holds_alternative<WindowShape>(shape);
}

}  // namespace understudy
