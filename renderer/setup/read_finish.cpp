#include "setup/read_finish.h"

namespace understudy {
namespace {

// Common practice, no source, except the grey: 0.18 is the reflectance that the scene file's exposure is defined by.
constexpr double kWhite = 0.9;
constexpr double kGrey = 0.18;
constexpr double kBlack = 0.04;

}  // namespace

std::optional<Finish> read_finish(TableReader& table, bool may_be_none) {
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
    return table.choice<Finish>(
        "surface", {{"white", white}, {"silver", silver}, {"gold", gold}, {"black", black}, {"grey", grey}});
}

}  // namespace understudy
