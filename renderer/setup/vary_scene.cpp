#include "setup/vary_scene.h"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "setup/kit_files.h"
#include "setup/read_setup.h"
#include "setup/vary_tree.h"

namespace understudy {
namespace {

Problem wrong(const std::string& text) { return {Blame::kWrongInput, text}; }

std::optional<Problem> too_many(const std::vector<Variation>& variations) {
    if (variations.size() > kMostVariations) {
        return wrong(fmt::format("--vary is given {} times; expected one, or two for a grid of rows and columns",
                                 variations.size()));
    }
    if (variations.size() == 2 && variations[0].path == variations[1].path) {
        return wrong(fmt::format("--vary {} is given twice; expected two different keys", variations[0].key));
    }
    std::size_t count = 1;
    for (const Variation& variation : variations) count *= variation.values.size();
    if (count <= kMostVariedScenes) return std::nullopt;
    return wrong(fmt::format("--vary asks for {} pictures; expected at most {}", count, kMostVariedScenes));
}

// One index a variation, the last running fastest.
std::vector<std::vector<std::string>> combinations(const std::vector<Variation>& variations) {
    std::vector<std::vector<std::string>> all{{}};
    for (const Variation& variation : variations) {
        std::vector<std::vector<std::string>> longer;
        for (const auto& values : all) {
            for (const std::string& value : variation.values) {
                longer.push_back(values);
                longer.back().push_back(value);
            }
        }
        all = std::move(longer);
    }
    return all;
}

Expected<ParsedScene> varied(Value tree, const std::vector<Variation>& variations,
                             const std::vector<std::string>& values, const Setup& base, const Library& library) {
    for (std::size_t i = 0; i < variations.size(); ++i) {
        const auto value = read_value(values[i], argument_of(variations[i], values[i]));
        if (!value) return value.problems();
        auto changed = with_value(std::move(tree), variations[i].path, *value, argument_of(variations[i]));
        if (!changed) return changed.problems();
        tree = std::move(*changed);
    }
    auto setup = setup_of_tree(tree, base.text, base.file, library);
    if (!setup) return told_with(setup.problems(), variations, values);
    return ParsedScene{std::move(*setup), std::move(tree)};
}

}  // namespace

Problems told_with(const Problems& problems, const std::vector<Variation>& variations,
                   const std::vector<std::string>& values) {
    std::vector<std::string> arguments;
    for (std::size_t i = 0; i < variations.size(); ++i) arguments.push_back(argument_of(variations[i], values[i]));
    Problems told;
    for (Problem problem : problems) {
        if (!problem.text.starts_with("--")) {
            problem.text = fmt::format("{}: {}", fmt::join(arguments, " "), problem.text);
        }
        told.push_back(std::move(problem));
    }
    return told;
}

Expected<ParsedScene> parse_changed_scene(const std::filesystem::path& scene_file,
                                          const std::vector<std::string>& changes, const Library& library) {
    std::vector<Variation> variations;
    std::vector<std::string> values;
    for (const std::string& change : changes) {
        auto variation = read_variation(change, "--with");
        if (!variation) return variation.problems();
        if (variation->values.size() != 1) {
            return wrong(fmt::format("--with {} gives {} values; expected one", change, variation->values.size()));
        }
        values.push_back(variation->values.front());
        variations.push_back(std::move(*variation));
    }
    auto base = read_setup(scene_file, library);
    if (!base) return base.problems();
    auto tree = parse_toml(base->text, scene_file.string());
    if (!tree) return tree.problems();
    return varied(std::move(*tree), variations, values, *base, library);
}

Expected<Setup> changed_scene(const std::filesystem::path& scene_file, const std::vector<std::string>& changes,
                              const Library& library) {
    auto scene = parse_changed_scene(scene_file, changes, library);
    if (!scene) return scene.problems();
    return std::move(scene->setup);
}

Expected<std::vector<VariedScene>> vary_scene(const std::filesystem::path& scene_file,
                                              const std::vector<Variation>& variations, const Library& library) {
    if (const auto problem = too_many(variations)) return *problem;
    const auto base = read_setup(scene_file, library);
    if (!base) return base.problems();
    const auto tree = parse_toml(base->text, scene_file.string());
    if (!tree) return tree.problems();
    std::vector<VariedScene> scenes;
    Problems problems;
    for (const auto& values : combinations(variations)) {
        auto scene = varied(*tree, variations, values, *base, library);
        if (scene) {
            scenes.push_back({values, std::move(scene->setup)});
            continue;
        }
        for (const Problem& problem : scene.problems()) {
            const auto same = [&](const Problem& told) { return told.text == problem.text; };
            if (std::none_of(problems.begin(), problems.end(), same)) problems.push_back(problem);
        }
    }
    if (!problems.empty()) return problems;
    return scenes;
}

}  // namespace understudy
