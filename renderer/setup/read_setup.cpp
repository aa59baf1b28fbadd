#include "setup/read_setup.h"

#include <algorithm>
#include <set>

#include <fmt/format.h>

#include "setup/kit_files.h"
#include "setup/nearest_name.h"
#include "setup/read_backdrop.h"
#include "setup/read_camera.h"
#include "setup/read_flash.h"
#include "setup/read_light.h"
#include "setup/read_panel.h"
#include "setup/read_picture.h"
#include "setup/read_room.h"
#include "setup/read_sitter.h"
#include "setup/table_reader.h"

namespace understudy {
namespace {

constexpr std::size_t kMostLights = 15;
constexpr std::size_t kMostPanels = 64;

// An absent table reads like an empty one: all defaults, and messages point at the file's beginning.
TableReader table_or_empty(TableReader& top, std::string_view key, const Value& empty) {
    return top.table(key).value_or(TableReader(empty, fmt::format("[{}]", key), top.log()));
}

std::vector<LightSettings> read_lights(TableReader& top, const Library& library, const std::vector<FlashHead>& flashes,
                                       std::optional<double> eye_height_m) {
    std::vector<LightSettings> lights;
    const std::vector<TableReader> tables = top.tables("light");
    const Value* said = top.find("light");
    const bool none_said = said == nullptr || (std::holds_alternative<ValueList>(said->content) &&
                                               std::get<ValueList>(said->content).values.empty());
    if (none_said) {
        top.log().add(top.place_of("light"), "there is no light",
                      "at least one [[light]] with a modifier and a meter value");
    }
    for (const TableReader& table : tables) {
        if (lights.size() == kMostLights) {
            top.log().add(table.place(), "there are more lights than can be kept apart",
                          fmt::format("at most {}", kMostLights));
            break;
        }
        lights.push_back(read_light(table, static_cast<int>(lights.size()) + 1, library.kit, flashes, eye_height_m));
    }
    return lights;
}

std::vector<PanelSettings> read_panels(TableReader& top, std::optional<double> eye_height_m) {
    std::vector<PanelSettings> panels;
    for (const TableReader& table : top.tables("panel")) {
        if (panels.size() == kMostPanels) {
            top.log().add(table.place(), "there are too many panels", fmt::format("at most {}", kMostPanels));
            break;
        }
        panels.push_back(read_panel(table, static_cast<int>(panels.size()) + 1, eye_height_m));
    }
    return panels;
}

// Light or panel: both have a name and a place.
template <class Named>
void check_unique(const std::vector<Named>& things, const std::vector<TableReader>& tables, std::string_view kind,
                  ProblemLog& log) {
    std::set<std::string> names;
    for (std::size_t i = 0; i < things.size(); ++i) {
        if (!names.insert(things[i].name).second) {
            log.add(tables[i].place_of("name"), fmt::format("a second {} is named \"{}\"", kind, shown(things[i].name)),
                    "a name of its own");
        }
    }
}

void check_gaze(const Setup& setup, TableReader& sitter) {
    const GazeAtLight* gaze = std::get_if<GazeAtLight>(&setup.sitter.gaze);
    if (gaze == nullptr) {
        return;
    }
    std::vector<std::string> valid{"camera"};
    for (const LightSettings& light : setup.lights) {
        valid.push_back(light.name);
    }
    if (std::find(valid.begin(), valid.end(), gaze->name) == valid.end()) {
        sitter.unknown_name("gaze", gaze->name, valid);
    }
}

// Nothing can point at, or be sharp on, a backdrop that is left out.
void check_backdrop(const Setup& setup, TableReader& camera, std::vector<TableReader> lights,
                    std::vector<TableReader> panels) {
    if (setup.backdrop) {
        return;
    }
    const std::string_view what = "is the backdrop, which is left out";
    if (setup.camera.focus.on == Focus::On::kBackdrop) {
        camera.wrong("focus", what, "near-eye, face or a length");
    }
    const auto check_aim = [&](TableReader& table, const Placement& placement) {
        if (placement.aim.target == Aim::Target::kBackdrop) {
            table.wrong("aim", what, "another aim, or a backdrop");
        }
    };
    check_aim(camera, setup.camera.placement);
    for (std::size_t i = 0; i < setup.lights.size(); ++i) {
        check_aim(lights[i], setup.lights[i].placement);
    }
    for (std::size_t i = 0; i < setup.panels.size(); ++i) {
        check_aim(panels[i], setup.panels[i].placement);
    }
}

// The tables of lights that read_lights() took, without complaining of the others again.
std::vector<TableReader> quiet_tables(const Value& top, std::string_view key, ProblemLog& log) {
    ProblemLog unheard;
    std::vector<TableReader> result;
    for (const TableReader& table : TableReader(top, "", unheard).tables(key)) {
        result.emplace_back(table.value(), table.name(), log);
    }
    return result;
}

Setup read_tree(const Value& tree, const std::filesystem::path& file, const Library& library, ProblemLog& log) {
    TableReader top(tree, "the scene file", log);
    const Value empty{tree.place, ValueTable{}};
    Setup setup;
    setup.title = top.text("title").value_or(file.stem().string());
    setup.picture = read_picture(table_or_empty(top, "picture", empty));
    TableReader sitter = table_or_empty(top, "sitter", empty);
    TableReader camera = table_or_empty(top, "camera", empty);
    const std::optional<double> eye_height_m = peek_eye_height(sitter);
    setup.camera = read_camera(camera, eye_height_m);
    setup.sitter = read_sitter(sitter, library, file);
    setup.flashes = read_flashes(top, file, library.kit);
    setup.lights = read_lights(top, library, setup.flashes, eye_height_m);
    setup.panels = read_panels(top, eye_height_m);
    const std::optional<TableReader> backdrop = top.table("backdrop");
    setup.backdrop = backdrop ? read_backdrop(*backdrop) : default_backdrop();
    TableReader room = table_or_empty(top, "room", empty);
    setup.room = read_room(room);
    top.report_unknown_keys();

    const std::vector<TableReader> lights = quiet_tables(tree, "light", log);
    const std::vector<TableReader> panels = quiet_tables(tree, "panel", log);
    check_unique(setup.lights, lights, "light", log);
    check_unique(setup.panels, panels, "panel", log);
    check_gaze(setup, sitter);
    check_backdrop(setup, camera, lights, panels);
    TableReader backdrop_table = backdrop.value_or(TableReader(empty, "[backdrop]", log));
    check_backdrop_fits(setup, backdrop_table, room);
    return setup;
}

}  // namespace

Expected<Setup> setup_of_tree(const Value& tree, const std::string& text, const std::filesystem::path& file,
                              const Library& library) {
    ProblemLog log;
    Setup setup = read_tree(tree, file, library, log);
    if (!log.empty()) {
        return log.in_order();
    }
    setup.file = file;
    setup.text = text;
    return setup;
}

Expected<Setup> parse_setup(const std::string& text, const std::filesystem::path& file, const Library& library) {
    const Expected<Value> tree = parse_toml(text, file.string());
    if (!tree) {
        return tree.problems();
    }
    return setup_of_tree(*tree, text, file, library);
}

Expected<Setup> read_setup(const std::filesystem::path& scene_file, const Library& library) {
    const Expected<std::string> text = read_text_file(scene_file);
    if (!text) {
        return text.problems();
    }
    return parse_setup(*text, scene_file, library);
}

}  // namespace understudy
