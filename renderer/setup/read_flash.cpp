#include "setup/read_flash.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "setup/kit_files.h"
#include "setup/read_f_number.h"
#include "setup/read_modifier.h"

namespace understudy {
namespace {

constexpr double kMostStopsDown = 10.0;  // 1/1024: further than any head's dial

// The value of a dial's key as text: on some heads it is a plain number.
std::optional<std::string> dial_words(TableReader& table, std::string_view key, const Dial& dial) {
    const Value* value = table.find(key);
    if (value == nullptr) return std::nullopt;
    if (const std::string* text = std::get_if<std::string>(&value->content)) return *text;
    if (dial.notation != Dial::Notation::kFractions) {
        if (const std::int64_t* whole = std::get_if<std::int64_t>(&value->content)) return fmt::format("{}", *whole);
        if (const double* number = std::get_if<double>(&value->content)) return fmt::format("{}", *number);
    }
    const std::string example = dial_text(dial, -2 * dial.steps_a_stop);
    table.wrong(key, "is " + kind_of(*value), fmt::format("a setting of the head's dial such as \"{}\"", example));
    return std::nullopt;
}

void log_dial_problem(TableReader& table, std::string_view key, const Problem& problem) {
    const SourcePlace place = table.place_of(key);
    table.log().add_all(place, {problem_at(place, fmt::format("{} {} {}", table.name(), key, problem.text))});
}

// How far down the dial goes.
int read_lowest(TableReader& table, const Dial& dial) {
    const std::optional<std::string> text = dial_words(table, "lowest", dial);
    if (!text) {
        if (dial.notation == Dial::Notation::kNumbers && !table.has("lowest")) {
            table.log().add(table.place(), table.name() + " has a scale without its lowest number", "lowest = 2.0");
        }
        return -8 * dial.steps_a_stop;
    }
    const Expected<int> steps = read_dial_without_range(dial, *text);
    if (!steps) {
        log_dial_problem(table, "lowest", steps.problems().front());
        return -8 * dial.steps_a_stop;
    }
    if (*steps >= 0 || stops_of_steps(dial, *steps) < -kMostStopsDown) {
        table.wrong(
            "lowest", fmt::format("is \"{}\"", shown(*text)),
            fmt::format("a setting under full, \"{}\", by at most {:.0f} stops", dial_text(dial, 0), kMostStopsDown));
    }
    return *steps;
}

Dial read_dial_table(TableReader& table) {
    Dial dial;
    dial.notation = table
                        .choice<Dial::Notation>("dial", {{"fractions", Dial::Notation::kFractions},
                                                         {"stops", Dial::Notation::kStopsFromFull},
                                                         {"scale", Dial::Notation::kNumbers}})
                        .value_or(dial.notation);
    dial.steps_a_stop = table.choice<int>("step", {{"tenths", 10}, {"thirds", 3}}).value_or(dial.steps_a_stop);
    const std::optional<double> highest = table.quantity("highest", kPlainNumber, {-100.0, 100.0});
    if (dial.notation != Dial::Notation::kNumbers && table.has("highest")) {
        table.log().add(table.key_place_of("highest"), table.name() + " has highest, but its dial is no scale",
                        "dial = \"scale\", or no highest: the top is full power");
    }
    if (dial.notation == Dial::Notation::kNumbers && !table.has("highest")) {
        table.log().add(table.place(), table.name() + " has a scale without its highest number", "highest = 10.0");
    }
    dial.number_at_full = highest.value_or(10.0);
    dial.lowest_steps = read_lowest(table, dial);
    return dial;
}

void need(TableReader& table, std::string_view key, std::string_view example) {
    if (!table.has(key)) {
        table.log().add(table.place(), fmt::format("{} has no {}", table.name(), key), example);
    }
}

std::optional<FlashCalibration> read_calibration(TableReader& head, const Dial& dial,
                                                 const std::filesystem::path& kit) {
    const Value* value = head.find("calibration");
    if (value == nullptr) return std::nullopt;
    if (!std::holds_alternative<ValueTable>(value->content)) {
        head.wrong("calibration", "is " + kind_of(*value),
                   R"({ modifier = "octa-120", dial = "1/8", distance = "1.5 m", reads = 5.6, iso = 100 })");
        return std::nullopt;
    }
    TableReader table(*value, head.name() + " calibration", head.log());
    need(table, "dial", fmt::format("dial = \"{}\" or another setting", dial_text(dial, 0)));
    need(table, "distance", "distance = a length");
    need(table, "reads", "reads = an f-number");
    FlashCalibration calibration;
    calibration.said_at = table.place();
    const std::optional<ModifierSettings> modifier = read_modifier(table, kit);
    const std::optional<int> steps = read_dial_key(table, "dial", dial);
    const std::optional<double> distance = table.quantity("distance", kLength, {0.1, 20.0});
    const std::optional<double> reads = read_f_number(table, "reads", {0.5, 128.0});
    calibration.iso = table.quantity("iso", kPlainNumber, {1.0, 1e6}).value_or(calibration.iso);
    table.report_unknown_keys();
    if (!modifier || !steps || !distance || !reads) return std::nullopt;
    calibration.modifier = *modifier;
    calibration.steps = *steps;
    calibration.distance_m = *distance;
    calibration.f_number = *reads;
    return calibration;
}

FlashHead read_head(TableReader table, const std::string& name, const std::filesystem::path& kit) {
    FlashHead head;
    head.name = name;
    need(table, "energy", "energy = \"500 J\", what it holds at full");
    head.full_energy_j = table.quantity("energy", kEnergy, {0.1, 1e5}).value_or(0.0);
    head.dial = read_dial_table(table);
    head.efficacy_lms_per_j = table.quantity("efficacy", kPlainNumber, {1.0, 200.0});
    head.modelling_lamp_lm = table.quantity("modelling_lamp", kLampFlux, {0.0, 1e6}).value_or(0.0);
    head.calibration = read_calibration(table, head.dial, kit);
    if (table.has("efficacy") && table.has("calibration")) {
        table.log().add(table.key_place_of("efficacy"), table.name() + " has both efficacy and calibration",
                        "only one of the two: the reading gives the efficacy");
    }
    table.report_unknown_keys();
    return head;
}

void read_heads(TableReader& top, const std::filesystem::path& kit, std::vector<FlashHead>& heads) {
    const std::optional<TableReader> tables = top.table("flash");
    if (!tables) return;
    for (const Entry& entry : std::get<ValueTable>(tables->value().content).entries) {
        const std::string name = fmt::format("[flash.{}]", shown(entry.key));
        if (!std::holds_alternative<ValueTable>(entry.value.content)) {
            top.log().add(entry.place, fmt::format("flash.{} is {}", shown(entry.key), kind_of(entry.value)),
                          fmt::format("a table {} for each head", name));
            continue;
        }
        const auto same = [&](const FlashHead& head) { return head.name == entry.key; };
        if (std::any_of(heads.begin(), heads.end(), same)) {
            top.log().add(entry.place, fmt::format("a second flash head is named \"{}\"", shown(entry.key)),
                          "a name of its own");
            continue;
        }
        heads.push_back(read_head(TableReader(entry.value, name, top.log()), entry.key, kit));
    }
}

void read_own_file(TableReader& top, const std::filesystem::path& scene_file, const std::filesystem::path& kit,
                   std::vector<FlashHead>& heads) {
    const std::optional<std::string> name = top.text("flashes");
    if (!name) return;
    const SourcePlace said_at = top.place_of("flashes");
    const std::filesystem::path file = scene_file.parent_path() / *name;
    const Expected<std::string> text = read_text_file(file);
    if (!text) {
        top.wrong("flashes", fmt::format("names \"{}\", which cannot be read", shown(*name)),
                  "a TOML file of [flash.NAME] tables beside the scene");
        return;
    }
    const Expected<Value> tree = parse_toml(*text, file.string());
    if (!tree) {
        top.log().add_all(said_at, tree.problems());
        return;
    }
    ProblemLog own;
    TableReader tables(*tree, "the file of flash heads", own);
    read_heads(tables, kit, heads);
    tables.report_unknown_keys();
    top.log().add_all(said_at, own.in_order());
}

}  // namespace

std::optional<int> read_dial_key(TableReader& table, std::string_view key, const Dial& dial) {
    const std::optional<std::string> text = dial_words(table, key, dial);
    if (!text) return std::nullopt;
    const Expected<int> steps = read_dial(dial, *text);
    if (steps) return *steps;
    log_dial_problem(table, key, steps.problems().front());
    return std::nullopt;
}

std::vector<FlashHead> read_flashes(TableReader& top, const std::filesystem::path& scene_file,
                                    const std::filesystem::path& kit) {
    std::vector<FlashHead> heads;
    read_heads(top, kit, heads);
    read_own_file(top, scene_file, kit, heads);
    return heads;
}

std::optional<std::size_t> read_flash_choice(TableReader& light, const std::vector<FlashHead>& flashes) {
    const std::optional<std::string> name = light.text("flash");
    if (!name) return std::nullopt;
    std::vector<std::string> valid;
    for (const FlashHead& head : flashes) {
        if (head.name == *name) return valid.size();
        valid.push_back(head.name);
    }
    if (valid.empty()) {
        light.wrong("flash", fmt::format("is \"{}\", but there is no flash head", shown(*name)),
                    "a table [flash.NAME], or flashes = a file of them");
    } else {
        light.unknown_name("flash", *name, valid);
    }
    return std::nullopt;
}

}  // namespace understudy
