// One scene file read once for each of the values that parts of it are to take.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "setup/setup.h"
#include "setup/toml_tree.h"
#include "setup/variation.h"

namespace understudy {

inline constexpr std::size_t kMostVariations = 2;
inline constexpr std::size_t kMostVariedScenes = 48;

struct VariedScene {
    std::vector<std::string> values;  // one of each variation
    Setup setup;
};

// Every combination of the variations' values, the last variation running fastest. The document is changed, not what
// was read from it, so whatever the reader knows can be varied and is checked as usual. All scenes' problems come back
// in one go; each names the --vary that it comes from.
Expected<std::vector<VariedScene>> vary_scene(const std::filesystem::path& scene_file,
                                              const std::vector<Variation>& variations, const Library& library);

// A scene, and the document that it says it in, changes made.
struct ParsedScene {
    Setup setup;
    Value document;
};

// The scene with each change made, as --with writes them: "light.key.distance=0.5 m". A range or a list of several
// values is a problem, as is whatever vary_scene would say.
Expected<ParsedScene> parse_changed_scene(const std::filesystem::path& scene_file,
                                          const std::vector<std::string>& changes, const Library& library);
Expected<Setup> changed_scene(const std::filesystem::path& scene_file, const std::vector<std::string>& changes,
                              const Library& library);

// The same problems, each with the --vary that it comes from where it does not say so itself.
Problems told_with(const Problems& problems, const std::vector<Variation>& variations,
                   const std::vector<std::string>& values);

}  // namespace understudy
