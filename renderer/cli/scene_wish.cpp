#include "cli/scene_wish.h"

#include <CLI/CLI.hpp>

#include "cli/own_library.h"
#include "setup/vary_scene.h"

namespace understudy {

void take_scene(CLI::App& command, SceneWish& wish) {
    command.add_option("SCENE", wish.file, "The scene file")->required();
    command
        .add_option("--with", wish.changes,
                    "A change of the scene for this once, as often as you like: sitter.chin=7, light.key.height=1.9")
        ->allow_extra_args(false)
        ->type_name("KEY=VALUE");
}

Expected<Setup> read_scene(const SceneWish& wish) { return changed_scene(wish.file, wish.changes, own_library()); }

}  // namespace understudy
