#include "cli/settle_sheet.h"

#include <fmt/format.h>

#include "claims/claim_text.h"

namespace understudy {

namespace {

// Two rows once one would be crowded.
int columns_for(std::size_t count) {
    constexpr std::size_t kMostInARow = 4;
    const std::size_t rows = (count + kMostInARow - 1) / kMostInARow;
    return static_cast<int>((count + rows - 1) / rows);
}

}  // namespace

Comparison comparison_of(const Claim& claim, const std::vector<ClaimReading>& readings) {
    Comparison comparison;
    comparison.columns = columns_for(readings.size());
    const int widest = cell_width(comparison.columns, true);
    for (const ClaimReading& reading : readings) {
        ComparedCell cell;
        cell.setup = fitted(reading.setup, widest);
        cell.card = card_of(cell.setup, reading.lit, reading.report);
        cell.report = reading.report;
        cell.developed_f_number = developed_f_number(claim, reading);
        cell.film = comparison.films++;
        comparison.cells.push_back(std::move(cell));
    }
    return comparison;
}

ContactSheet sheet_of(const Claim& claim, const std::vector<ClaimReading>& readings,
                      const std::vector<CellPictures>& pictures) {
    const Settled settled = claim.settle(readings);
    ContactSheet sheet;
    sheet.title = claim.claim;
    sheet.note = fmt::format("Against it: {}\n{}", claim.opposite, outcome_sentence(settled.outcome));
    for (const std::string& sentence : settled.holds) sheet.note += "\n" + sentence;
    for (const std::string& sentence : settled.conditions) sheet.note += "\n" + sentence;
    sheet.columns = columns_for(readings.size());
    const std::vector<ToldQuantity> quantities = told_quantities(claim, readings);
    for (const ToldQuantity& quantity : quantities) sheet.labels.push_back(quantity.name);
    for (std::size_t i = 0; i < readings.size(); ++i) {
        SheetCell cell{
            fmt::format("{}: {}", case_letter(i), claim.cases[i].title), pictures[i].picture, pictures[i].eyes, {}, ""};
        for (const ToldQuantity& quantity : quantities) {
            cell.lines.push_back(told(quantity, readings[i]));
        }
        sheet.cells.push_back(std::move(cell));
    }
    return sheet;
}

}  // namespace understudy
