// Which scene a command is asked for, and what of it is to be other than its file says.
#pragma once

#include <string>
#include <vector>

#include "base/expected.h"
#include "setup/setup.h"

namespace CLI {
class App;
}

namespace understudy {

struct SceneWish {
    std::string file;
    std::vector<std::string> changes;  // KEY=VALUE
};

// Adds SCENE and --with to a command.
void take_scene(CLI::App& command, SceneWish& wish);

Expected<Setup> read_scene(const SceneWish& wish);

}  // namespace understudy
