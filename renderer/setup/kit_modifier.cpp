#include "setup/kit_modifier.h"

#include <algorithm>

#include <fmt/format.h>

#include "setup/kit_files.h"
#include "setup/nearest_name.h"
#include "setup/read_modifier.h"

namespace understudy {

Expected<ModifierSettings> read_kit_file(const std::string& name, const std::filesystem::path& kit) {
    const std::vector<std::string> valid = toml_names_in(kit);
    if (std::find(valid.begin(), valid.end(), name) == valid.end()) {
        return Problem{Blame::kWrongInput, fmt::format("\"{}\" is not in the kit {}; expected {}", shown(name),
                                                       kit.string(), expected_names(name, valid))};
    }
    // As a scene would name it.
    const Value said{{name, 1, 1}, ValueTable{{Entry{"modifier", {name, 1, 1}, Value{{name, 1, 1}, name}}}}};
    ProblemLog log;
    TableReader light(said, "the kit", log);
    const std::optional<ModifierSettings> settings = read_modifier(light, kit);
    if (!settings || !log.empty()) return log.in_order();
    return *settings;
}

}  // namespace understudy
