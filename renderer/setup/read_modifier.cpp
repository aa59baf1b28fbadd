#include "setup/read_modifier.h"

#include <algorithm>
#include <functional>

#include <fmt/format.h>

#include "setup/kit_files.h"
#include "setup/modifier_base.h"
#include "setup/nearest_name.h"
#include "setup/needed_length.h"
#include "setup/read_construction.h"
#include "setup/read_lit_shapes.h"
#include "setup/read_photometric.h"

namespace understudy {
namespace {

// Common practice, no source: a cloth-fronted box loses about a stop of what the tube gives, a bare globe nothing.
constexpr double kFrontEfficiency = 0.5;
constexpr double kSphereEfficiency = 1.0;

std::optional<ModifierShape> read_rectangle(TableReader& table) {
    const std::optional<double> width = needed_length(table, "width", "rectangle");
    const std::optional<double> height = needed_length(table, "height", "rectangle");
    return width && height ? std::optional<ModifierShape>(RectangleShape{*width, *height}) : std::nullopt;
}

std::optional<ModifierShape> read_disc(TableReader& table) {
    const std::optional<double> diameter = needed_length(table, "diameter", "disc");
    return diameter ? std::optional<ModifierShape>(DiscShape{*diameter}) : std::nullopt;
}

std::optional<ModifierShape> read_ring(TableReader& table) {
    const std::optional<double> diameter = needed_length(table, "diameter", "ring");
    const std::optional<double> inner = needed_length(table, "inner", "ring");
    if (!diameter || !inner) {
        return std::nullopt;
    }
    if (*inner >= *diameter) {
        table.wrong("inner", "is " + show_measure(*inner, kLength),
                    "less than the diameter, " + show_measure(*diameter, kLength));
        return std::nullopt;
    }
    return RingShape{*diameter, *inner};
}

std::optional<ModifierShape> read_polygon(TableReader& table) {
    if (!table.has("sides")) {
        table.log().add(table.place(), table.name() + " of shape \"polygon\" has no sides",
                        "sides = a whole number from 3 to 64");
    }
    const std::optional<long long> sides = table.whole("sides", 3, 64);
    const std::optional<double> diameter = needed_length(table, "diameter", "polygon");
    return sides && diameter ? std::optional<ModifierShape>(PolygonShape{static_cast<int>(*sides), *diameter})
                             : std::nullopt;
}

std::optional<ModifierShape> read_sphere(TableReader& table) {
    const std::optional<double> diameter = needed_length(table, "diameter", "sphere");
    return diameter ? std::optional<ModifierShape>(SphereShape{*diameter}) : std::nullopt;
}

std::optional<ModifierShape> read_dome(TableReader& table) {
    const std::optional<double> diameter = needed_length(table, "diameter", "dome");
    const std::optional<double> depth = needed_length(table, "depth", "dome");
    if (!diameter || !depth) {
        return std::nullopt;
    }
    if (*depth > *diameter / 2.0) {
        table.wrong("depth", "is " + show_measure(*depth, kLength),
                    "at most half the diameter, " + show_measure(*diameter / 2.0, kLength));
        return std::nullopt;
    }
    return DomeShape{*diameter, *depth};
}

using ShapeReader = std::function<std::optional<ModifierShape>(TableReader&)>;

bool is_flat(const ModifierShape& shape) {
    return std::holds_alternative<RectangleShape>(shape) || std::holds_alternative<DiscShape>(shape) ||
           std::holds_alternative<RingShape>(shape) || std::holds_alternative<PolygonShape>(shape);
}

// The light of a photometric file: from a point, or spread over the front whose shape is said.
std::optional<ModifierSettings> with_photometric(TableReader& table, const std::optional<ModifierShape>& shape,
                                                 double efficiency) {
    const std::shared_ptr<const PhotometricFile> file = read_photometric(table);
    table.report_unknown_keys();
    if (shape && !is_flat(*shape)) {
        table.wrong("shape", "is not flat, and the photometric file's light would not fit it",
                    "rectangle, disc, ring or polygon, or no shape for a point");
        return std::nullopt;
    }
    if (!file) {
        return std::nullopt;
    }
    const std::string name = std::filesystem::path(*table.text("photometric")).filename().string();
    return ModifierSettings{name, shape.value_or(PointShape{}), efficiency, std::nullopt, file};
}

std::optional<ModifierSettings> read_own_modifier(TableReader table, const std::string& name) {
    const bool photometric = table.has("photometric");
    if (!table.has("shape") && !photometric) {
        table.log().add(table.place(), table.name() + " has no shape", "shape = \"rectangle\" or another");
    }
    const std::optional<ShapeReader> reader = table.choice<ShapeReader>("shape", {{"rectangle", read_rectangle},
                                                                                  {"disc", read_disc},
                                                                                  {"ring", read_ring},
                                                                                  {"polygon", read_polygon},
                                                                                  {"sphere", read_sphere},
                                                                                  {"dome", read_dome},
                                                                                  {"umbrella", read_umbrella},
                                                                                  {"frame", read_frame},
                                                                                  {"window", read_window}});
    const std::optional<double> efficiency = table.quantity("efficiency", kPlainNumber, {0.01, 1.0});
    if (efficiency && table.has("body")) {
        table.log().add(table.key_place_of("efficiency"), table.name() + " has both a body and an efficiency",
                        "no efficiency: it follows from how the modifier is built");
    }
    if (photometric && !table.has("shape")) {
        return with_photometric(table, std::nullopt, efficiency.value_or(1.0));
    }
    if (!reader) {
        return std::nullopt;  // which other keys belong here depends on the shape
    }
    const std::optional<ModifierShape> shape = (*reader)(table);
    if (photometric && shape) {
        return with_photometric(table, shape, efficiency.value_or(1.0));
    }
    table.find("photometric");
    std::optional<Construction> construction;
    if (table.has("body") && shape) {
        construction = read_construction(table, *shape);
    }
    if (shape || !table.has("body")) {
        table.report_unknown_keys();
    }
    if (!shape) {
        return std::nullopt;
    }
    if (table.has("efficiency") && works_out_its_light(*shape)) {
        table.log().add(table.key_place_of("efficiency"),
                        table.name() + " has an efficiency, which its shape already says",
                        "no efficiency; head_efficiency for what the head's reflector lets out");
    }
    const double usual = std::holds_alternative<SphereShape>(*shape) ? kSphereEfficiency : kFrontEfficiency;
    return ModifierSettings{name.empty() ? *table.text("shape") : name, *shape, efficiency.value_or(usual),
                            construction};
}

std::optional<ModifierSettings> read_kit_modifier(TableReader& light, const std::string& name,
                                                  const std::filesystem::path& kit) {
    const std::optional<Value> keys = kit_modifier_keys(light, "modifier", name, kit);
    if (!keys) {
        return std::nullopt;
    }
    ProblemLog kit_log;
    std::optional<ModifierSettings> result = read_own_modifier(TableReader(*keys, "the modifier", kit_log), name);
    light.log().add_all(light.place_of("modifier"), kit_log.in_order());
    return result;
}

// A table of one's own, or one of the kit's with some keys changed.
std::optional<ModifierSettings> read_modifier_table(const Value& table, ProblemLog& log,
                                                    const std::filesystem::path& kit) {
    TableReader reader(table, "modifier", log);
    const std::optional<Value> keys = with_base(table, "modifier", log, kit);
    if (!keys) {
        return std::nullopt;
    }
    const std::string name = reader.is_text("base") ? *reader.text("base") + " (changed)" : "";
    // In a log of its own: whether this table is in order does not hang on the rest of the file.
    ProblemLog own_log;
    std::optional<ModifierSettings> result = read_own_modifier(TableReader(*keys, "modifier", own_log), name);
    log.add_all(table.place, own_log.in_order());
    return result;
}

}  // namespace

std::optional<ModifierSettings> read_modifier(TableReader& light, const std::filesystem::path& kit) {
    const Value* value = light.find("modifier");
    if (value == nullptr) {
        light.log().add(light.place(), light.name() + " has no modifier",
                        "modifier = " + expected_names("", toml_names_in(kit)) + ", or a table with a shape");
        return std::nullopt;
    }
    if (std::holds_alternative<ValueTable>(value->content)) {
        return read_modifier_table(*value, light.log(), kit);
    }
    if (const std::string* name = std::get_if<std::string>(&value->content)) {
        return read_kit_modifier(light, *name, kit);
    }
    light.wrong("modifier", "is " + kind_of(*value), "a name of the kit or a table with a shape");
    return std::nullopt;
}

}  // namespace understudy
