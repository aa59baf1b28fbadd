#include "setup/read_finish.h"

#include <fmt/format.h>

#include "setup/finish_names.h"
#include "spectrum/smooth_reflectance.h"

namespace understudy {
namespace {

constexpr Range kReflectance{0.0, 0.98};

std::optional<Finish> named_finish(TableReader& table, std::string_view key, Covering what) {
    const std::optional<std::string> name = table.text(key);
    if (!name) return std::nullopt;
    std::vector<std::string> valid;
    const auto find_in = [&](const NamedFinishes& finishes) -> std::optional<Finish> {
        for (const auto& [known, finish] : finishes) {
            if (known == *name) return finish;
            valid.emplace_back(known);
        }
        return std::nullopt;
    };
    if (const auto plain = find_in(plain_finishes())) return plain;
    if (what == Covering::kPanel) {
        if (const auto cloth = find_in(cloth_finishes())) return cloth;
    }
    if (what == Covering::kBackdrop) {
        if (*name == "none") return Reflectance{0.0};
        valid.emplace_back("none");
    }
    table.unknown_name(key, *name, valid);
    return std::nullopt;
}

std::optional<Finish> tint_of(TableReader& table, std::string_view key, const Lab& colour) {
    const auto reflectance = smooth_reflectance(colour);
    if (reflectance) return Tint{*reflectance};
    table.wrong(key, "is a colour that no matt surface has", "a darker or less colourful one, and not pure black");
    return std::nullopt;
}

// { colour = [r, g, b] }, sRGB codes, or { lab = [L, a, b] } in daylight.
std::optional<Finish> read_tint(TableReader table) {
    if (table.has("colour") && table.has("lab")) {
        table.log().add(table.key_place_of("lab"), table.name() + " has both colour and lab", "one of the two");
        return std::nullopt;
    }
    const auto codes = table.point("colour", kPlainNumber, {0.0, 255.0});
    const auto lab = table.point("lab", kPlainNumber, {-200.0, 200.0});
    table.report_unknown_keys();
    if (lab) return tint_of(table, "lab", {lab->x, lab->y, lab->z});
    if (!codes) return std::nullopt;
    const Double3 linear(decode_srgb(codes->x / 255.0), decode_srgb(codes->y / 255.0), decode_srgb(codes->z / 255.0));
    return tint_of(table, "colour", lab_of(xyz_of_linear_srgb(linear), kD65White));
}

std::optional<Finish> read_cloth(TableReader table) {
    constexpr Range kShare{0.0, 1.0};
    Cloth cloth;
    cloth.reflects = table.quantity("reflects", kPlainNumber, kShare).value_or(0.0);
    cloth.transmits = table.quantity("transmits", kPlainNumber, kShare).value_or(0.0);
    cloth.open = table.quantity("open", kPlainNumber, kShare).value_or(0.0);
    table.report_unknown_keys();
    const double all = cloth.reflects + cloth.transmits + cloth.open;
    if (all <= 1.0 + 1e-9) return cloth;
    table.log().add(table.place(), fmt::format("{}: reflects, transmits and open are {:.4g} in all", table.name(), all),
                    "at most 1: a cloth gives no more light than falls on it");
    return std::nullopt;
}

// A matt surface of one colour as its spectrum, read from an element of a list.
std::optional<Spectrum> read_tone(const Value& value, const TableReader& table, ProblemLog& log) {
    const Value wrapped{value.place, ValueTable{{Entry{"mottled", value.place, value}}}};
    TableReader one(wrapped, table.name(), log);
    const auto finish = read_finish(one, "mottled", Covering::kWall);
    if (!finish) return std::nullopt;
    if (const auto* grey = std::get_if<Reflectance>(&*finish)) return Spectrum(static_cast<float>(grey->value));
    if (const auto* tint = std::get_if<Tint>(&*finish)) return tint->reflectance;
    one.wrong("mottled", "has a metal for a tone", "two matt surfaces");
    return std::nullopt;
}

// { mottled = [tone, tone], scale = …, seed = … }
std::optional<Finish> read_mottled(TableReader table) {
    Mottled mottled;
    mottled.scale_m = table.quantity("scale", kLength, {0.02, 5.0}).value_or(mottled.scale_m);
    mottled.seed = static_cast<unsigned>(table.whole("seed", 0, 4294967295LL).value_or(0));
    const Value& said = *table.find("mottled");
    table.report_unknown_keys();
    const auto* list = std::get_if<ValueList>(&said.content);
    if (list == nullptr || list->values.size() != 2) {
        table.wrong("mottled", "is " + kind_of(said), "a list of two surfaces, the tones");
        return std::nullopt;
    }
    const auto first = read_tone(list->values[0], table, table.log());
    const auto second = read_tone(list->values[1], table, table.log());
    if (!first || !second) return std::nullopt;
    mottled.first = *first;
    mottled.second = *second;
    return mottled;
}

std::optional<Finish> table_finish(const TableReader& table, Covering what) {
    if (table.has("mottled") && what == Covering::kBackdrop) return read_mottled(table);
    if (table.has("colour") || table.has("lab")) return read_tint(table);
    const bool cloth = table.has("reflects") || table.has("transmits") || table.has("open");
    if (cloth && what == Covering::kPanel) return read_cloth(table);
    const std::string_view more = what == Covering::kPanel      ? ", or a cloth's reflects, transmits and open"
                                  : what == Covering::kBackdrop ? ", or mottled = [tone, tone]"
                                                                : "";
    TableReader(table).log().add(table.place(), table.name() + " says of no surface that could be here",
                                 fmt::format("colour = [r, g, b] or lab = [L, a, b]{}", more));
    return std::nullopt;
}

}  // namespace

std::optional<Finish> read_finish(TableReader& table, std::string_view key, Covering what) {
    if (table.is_text(key)) return named_finish(table, key, what);
    const Value* value = table.find(key);
    if (value == nullptr) return std::nullopt;
    if (std::holds_alternative<ValueTable>(value->content)) {
        return table_finish(TableReader(*value, fmt::format("{} {}", table.name(), key), table.log()), what);
    }
    const std::optional<double> reflectance = table.quantity(key, kPlainNumber, kReflectance);
    return reflectance ? std::optional<Finish>(Reflectance{*reflectance}) : std::nullopt;
}

}  // namespace understudy
