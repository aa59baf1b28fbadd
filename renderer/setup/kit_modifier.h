// One modifier of the kit's folder by its name, without a scene.
#pragma once

#include <filesystem>
#include <string>

#include "base/expected.h"
#include "setup/setup.h"

namespace understudy {

Expected<ModifierSettings> read_kit_file(const std::string& name, const std::filesystem::path& kit);

}  // namespace understudy
