#include "setup/read_hair.h"

#include "setup/hair_names.h"

namespace understudy {
namespace {

constexpr Range kConcentration{0.0, 20.0};

template <class T, std::size_t N>
std::optional<T> read_named(TableReader& table, std::string_view key, const NamesOf<T, N>& names) {
    const auto given = table.text(key);
    if (!given) return std::nullopt;
    const auto found = named(names, *given);
    if (!found) table.unknown_name(key, *given, all_names(names));
    return found;
}

// A name, or the concentrations of both melanins.
std::optional<HairPigment> read_colour(TableReader& table) {
    if (!table.has("colour") || table.is_text("colour")) return read_named(table, "colour", kHairColours);
    auto melanins = table.table("colour");
    if (!melanins) return std::nullopt;
    HairPigment pigment{0.0, 0.0};
    pigment.eumelanin = melanins->quantity("eumelanin", kPlainNumber, kConcentration).value_or(0.0);
    pigment.pheomelanin = melanins->quantity("pheomelanin", kPlainNumber, kConcentration).value_or(0.0);
    melanins->report_unknown_keys();
    return pigment;
}

void read_hair_table(TableReader table, HairSettings& hair) {
    hair.style = read_named(table, "style", kHairStyles);
    hair.fringe = table.truth("fringe");
    hair.colour = read_colour(table);
    hair.grey = table.quantity("grey", kPlainNumber, {0.0, 1.0});
    table.report_unknown_keys();
}

}  // namespace

HairSettings read_hair(TableReader& sitter) {
    HairSettings hair;
    if (sitter.is_text("hair")) {
        hair.style = read_named(sitter, "hair", kHairStyles);
    } else if (const Value* value = sitter.find("hair")) {
        if (std::holds_alternative<ValueTable>(value->content)) {
            read_hair_table(*sitter.table("hair"), hair);
        } else {
            sitter.wrong("hair", "is " + kind_of(*value), "a style's name, or { style, fringe, colour, grey }");
        }
    }
    hair.beard = read_named(sitter, "beard", kBeardStyles);
    hair.brows = read_named(sitter, "brows", kBrowStyles);
    return hair;
}

}  // namespace understudy
