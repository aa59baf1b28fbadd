#include "setup/read_finish.h"

#include <fmt/format.h>

namespace understudy {
namespace {

// Common practice, no source, except the grey: 0.18 is the reflectance that the scene file's exposure is defined by.
constexpr double kWhite = 0.9;
constexpr double kGrey = 0.18;
constexpr double kBlack = 0.04;
// Diffusion cloth by how much it takes: 1.4, 0.9 and 0.5 stops of light that comes from far behind. The thinner, the
// more passes between its threads.
constexpr Cloth kFullDiffusion{0.55, 0.38, 0.0};
constexpr Cloth kHalfDiffusion{0.40, 0.45, 0.10};
constexpr Cloth kQuarterDiffusion{0.25, 0.45, 0.25};

bool is_table(const TableReader& table, std::string_view key) {
    const Value* value = TableReader(table).find(key);
    return value != nullptr && std::holds_alternative<ValueTable>(value->content);
}

std::optional<Finish> read_cloth(TableReader table) {
    constexpr Range kShare{0.0, 1.0};
    Cloth cloth;
    cloth.reflects = table.quantity("reflects", kPlainNumber, kShare).value_or(0.0);
    cloth.transmits = table.quantity("transmits", kPlainNumber, kShare).value_or(0.0);
    cloth.open = table.quantity("open", kPlainNumber, kShare).value_or(0.0);
    table.report_unknown_keys();
    const double all = cloth.reflects + cloth.transmits + cloth.open;
    if (all > 1.0 + 1e-9) {
        table.log().add(table.place(),
                        fmt::format("the cloth gives {:.4g} of the light that falls on it: reflects, transmits and "
                                    "open together",
                                    all),
                        "at most 1 in all");
        return std::nullopt;
    }
    return cloth;
}

}  // namespace

std::optional<Finish> read_finish(TableReader& table, bool may_be_none) {
    if (!may_be_none && is_table(table, "surface")) {
        return read_cloth(TableReader(*table.find("surface"), table.name() + " surface", table.log()));
    }
    if (!table.is_text("surface")) {
        const std::optional<double> value = table.quantity("surface", kPlainNumber, {0.0, 0.98});
        return value ? std::optional<Finish>(Reflectance{*value}) : std::nullopt;
    }
    const Finish white = Reflectance{kWhite};
    const Finish silver = Metal::kSilver;
    const Finish gold = Metal::kGold;
    const Finish black = Reflectance{kBlack};
    const Finish grey = Reflectance{kGrey};
    if (may_be_none) {
        return table.choice<Finish>(
            "surface",
            {{"white", white}, {"silver", silver}, {"gold", gold}, {"black", black}, {"grey", grey}, {"none", black}});
    }
    return table.choice<Finish>("surface", {{"white", white},
                                            {"silver", silver},
                                            {"gold", gold},
                                            {"black", black},
                                            {"grey", grey},
                                            {"diffusion", kFullDiffusion},
                                            {"half-diffusion", kHalfDiffusion},
                                            {"quarter-diffusion", kQuarterDiffusion}});
}

}  // namespace understudy
