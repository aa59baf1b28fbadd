#include "claims/claim_text.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "report/table.h"
#include "report/words.h"

namespace understudy {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t kWidth = 100;

// At the blanks, every line but the first begun with so many blanks.
std::string wrapped(const std::string& first, const std::string& text) {
    const std::string indent(display_width(first), ' ');
    std::string lines = first;
    std::size_t used = display_width(first);
    bool begun = false;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        const std::string one = text.substr(at, end - at);
        if (begun && used + 1 + display_width(one) > kWidth) {
            lines += "\n" + indent;
            used = indent.size();
            begun = false;
        }
        if (begun) lines += ' ';
        lines += one;
        used += display_width(one) + (begun ? 1 : 0);
        begun = true;
        at = end + 1;
    }
    return lines + "\n";
}

Json numbers_of(const Claim& claim, const ClaimReading& reading) {
    Json numbers = Json::object();
    for (const ToldQuantity& quantity : claim.quantities) {
        if (quantity.of == nullptr) continue;
        const double value = quantity.of(reading);
        numbers[quantity.key] = std::isfinite(value) ? Json(value) : Json();
    }
    return numbers;
}

std::string numbers_table(const Claim& claim, const std::vector<ClaimReading>& readings) {
    std::vector<Column> columns{{""}};
    for (std::size_t i = 0; i < readings.size(); ++i) columns.push_back({case_letter(i), Align::kRight});
    Table table(columns);
    for (const ToldQuantity& quantity : told_quantities(claim, readings)) {
        std::vector<std::string> row{quantity.name};
        for (const ClaimReading& reading : readings) row.push_back(told(quantity, reading));
        table.add_row(std::move(row));
    }
    return table.text();
}

}  // namespace

std::string word(Outcome outcome) {
    switch (outcome) {
        case Outcome::kClaim:
            return "claim";
        case Outcome::kOpposite:
            return "opposite";
        case Outcome::kBoth:
            return "both";
        case Outcome::kDepends:
            return "depends";
        case Outcome::kNeither:
            return "neither";
    }
    return "";
}

std::string outcome_sentence(Outcome outcome) {
    switch (outcome) {
        case Outcome::kClaim:
            return "In this experiment the claim holds.";
        case Outcome::kOpposite:
            return "In this experiment the claim does not hold; its opposite does.";
        case Outcome::kBoth:
            return "Both hold: they speak of different things.";
        case Outcome::kDepends:
            return "It depends: which of them holds changes among these cases.";
        case Outcome::kNeither:
            return "In this experiment neither holds.";
    }
    return "";
}

std::string told(const ToldQuantity& quantity, const ClaimReading& reading) {
    return without_controls(quantity.words != nullptr ? quantity.words(reading) : quantity.told(quantity.of(reading)));
}

std::vector<ToldQuantity> told_quantities(const Claim& claim, const std::vector<ClaimReading>& readings) {
    std::vector<ToldQuantity> quantities;
    for (const ToldQuantity& quantity : claim.quantities) {
        const auto has = [&](const ClaimReading& reading) { return told(quantity, reading) != "none"; };
        if (std::any_of(readings.begin(), readings.end(), has)) quantities.push_back(quantity);
    }
    return quantities;
}

std::string case_letter(std::size_t index) { return {static_cast<char>('A' + index)}; }

std::string case_source(const ClaimCase& one, const std::filesystem::path& scenes) {
    std::string source = (scenes / (one.scene + ".toml")).string();
    for (std::size_t i = 0; i < one.changes.size(); ++i) {
        const std::size_t equals = one.changes[i].find('=');
        source += fmt::format("{} {} = {}", i == 0 ? " with" : ",", one.changes[i].substr(0, equals),
                              one.changes[i].substr(equals + 1));
    }
    return source;
}

std::string claim_list_text() {
    std::string text;
    for (const Claim& claim : all_claims()) {
        text += claim.name + "\n";
        text += wrapped("  claim:    ", claim.claim);
        text += wrapped("  opposite: ", claim.opposite);
    }
    return text + "\nunderstudy settle CLAIM puts one to the test.\n";
}

std::string claim_text(const Claim& claim, const std::vector<ClaimReading>& readings,
                       const std::filesystem::path& scenes) {
    const Settled settled = claim.settle(readings);
    std::string text = claim.name + "\n";
    text += wrapped("  claim:    ", claim.claim);
    text += wrapped("  opposite: ", claim.opposite);
    text += heading("Experiment");
    text += wrapped("  ", claim.experiment);
    for (std::size_t i = 0; i < claim.cases.size(); ++i) {
        text += wrapped(fmt::format("  {}: ", case_letter(i)),
                        fmt::format("{}; {}", claim.cases[i].title, case_source(claim.cases[i], scenes)));
    }
    text += heading("Measured") + numbers_table(claim, readings);
    text += heading("What holds here") + wrapped("  ", outcome_sentence(settled.outcome));
    for (const std::string& sentence : settled.holds) text += wrapped("  - ", sentence);
    if (!settled.conditions.empty()) text += heading("Under which conditions");
    for (const std::string& sentence : settled.conditions) text += wrapped("  - ", sentence);
    return text;
}

std::string claim_json(const Claim& claim, const std::vector<ClaimReading>& readings,
                       const std::filesystem::path& scenes) {
    const Settled settled = claim.settle(readings);
    Json cases = Json::array();
    for (std::size_t i = 0; i < readings.size(); ++i) {
        Json words = Json::object();
        for (const ToldQuantity& quantity : claim.quantities) words[quantity.name] = told(quantity, readings[i]);
        cases.push_back({{"letter", case_letter(i)},
                         {"title", claim.cases[i].title},
                         {"scene", (scenes / (claim.cases[i].scene + ".toml")).string()},
                         {"changes", claim.cases[i].changes},
                         {"developed_f_number", developed_f_number(claim, readings[i])},
                         {"numbers", numbers_of(claim, readings[i])},
                         {"words", words}});
    }
    const Json json{{"claim", claim.name},
                    {"says", claim.claim},
                    {"opposite", claim.opposite},
                    {"outcome", word(settled.outcome)},
                    {"holds", settled.holds},
                    {"conditions", settled.conditions},
                    {"cases", cases}};
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

}  // namespace understudy
