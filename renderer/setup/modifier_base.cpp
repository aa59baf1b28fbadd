#include "setup/modifier_base.h"

#include <algorithm>

#include <fmt/format.h>

#include "setup/kit_files.h"

namespace understudy {

namespace {

constexpr int kMostBases = 8;

Value laid_over(const Value& base, const Value& own) {
    Value result = base;
    result.place = own.place;
    auto& entries = std::get<ValueTable>(result.content).entries;
    for (const Entry& entry : std::get<ValueTable>(own.content).entries) {
        const auto namesake =
            std::find_if(entries.begin(), entries.end(), [&](const Entry& other) { return other.key == entry.key; });
        if (namesake == entries.end()) {
            entries.push_back(entry);
        } else if (std::holds_alternative<ValueTable>(entry.value.content) &&
                   std::holds_alternative<ValueTable>(namesake->value.content)) {
            namesake->place = entry.place;
            namesake->value = laid_over(namesake->value, entry.value);
        } else {
            *namesake = entry;
        }
    }
    return result;
}

std::optional<Value> keys_of_file(TableReader& asking, std::string_view key, const std::string& name,
                                  const std::filesystem::path& kit, int depth);

std::optional<Value> based(const Value& table, const std::string& called, ProblemLog& log,
                           const std::filesystem::path& kit, int depth) {
    TableReader reader(table, called, log);
    if (!reader.has("base")) return table;
    const std::optional<std::string> name = reader.text("base");
    if (!name) return std::nullopt;
    if (depth >= kMostBases) {
        reader.wrong("base", fmt::format("\"{}\" leads through more than {} files", shown(*name), kMostBases),
                     "a modifier that is not based on itself");
        return std::nullopt;
    }
    const std::optional<Value> base = keys_of_file(reader, "base", *name, kit, depth + 1);
    if (!base) return std::nullopt;
    Value own = table;
    std::erase_if(std::get<ValueTable>(own.content).entries, [](const Entry& entry) { return entry.key == "base"; });
    return laid_over(*base, own);
}

std::optional<Value> keys_of_file(TableReader& asking, std::string_view key, const std::string& name,
                                  const std::filesystem::path& kit, int depth) {
    const std::vector<std::string> valid = toml_names_in(kit);
    if (valid.empty()) {
        asking.wrong(key, fmt::format("is \"{}\"", shown(name)),
                     fmt::format("modifiers in the kit's folder \"{}\", which has none", kit.string()));
        return std::nullopt;
    }
    if (std::find(valid.begin(), valid.end(), name) == valid.end()) {
        asking.unknown_name(key, name, valid);
        return std::nullopt;
    }
    const std::filesystem::path file = kit / (name + ".toml");
    const Expected<std::string> text = read_text_file(file);
    if (!text) {
        asking.log().add_all(asking.place_of(key), text.problems());
        return std::nullopt;
    }
    const Expected<Value> tree = parse_toml(*text, file.string());
    if (!tree) {
        asking.log().add_all(asking.place_of(key), tree.problems());
        return std::nullopt;
    }
    ProblemLog kit_log;
    std::optional<Value> result = based(*tree, "the modifier", kit_log, kit, depth);
    asking.log().add_all(asking.place_of(key), kit_log.in_order());
    return result;
}

}  // namespace

std::optional<Value> kit_modifier_keys(TableReader& asking, std::string_view key, const std::string& name,
                                       const std::filesystem::path& kit) {
    return keys_of_file(asking, key, name, kit, 0);
}

std::optional<Value> with_base(const Value& table, const std::string& called, ProblemLog& log,
                               const std::filesystem::path& kit) {
    return based(table, called, log, kit, 0);
}

}  // namespace understudy
