#include "sitter/head_recipe.h"

#include <fmt/format.h>

#include <toml++/toml.h>
#include <cmath>

namespace understudy {
namespace {

Problem wrong(const std::filesystem::path& path, const toml::source_region& at, const std::string& what) {
    return {Blame::kWrongInput, fmt::format("{}:{}:{}: {}", path.string(), at.begin.line, at.begin.column, what)};
}

struct Reader {
    const std::filesystem::path& path;
    HeadRecipe recipe;
    Problems problems;

    void fraction(const toml::node& node, const std::string& key, double most, double& into) {
        const auto number = node.value<double>();
        if (node.is_number() && *number >= 0.0 && *number <= most) {
            into = *number;
            return;
        }
        problems.push_back(wrong(path, node.source(), fmt::format("{} is no number from 0 to {}", key, most)));
    }

    void shapes(const toml::table& table) {
        for (const auto& [key, node] : table) {
            const auto amount = node.value<double>();
            if (node.is_number() && std::abs(*amount) <= 2.0) {
                recipe.shapes[std::string(key.str())] = *amount;
                continue;
            }
            problems.push_back(
                wrong(path, node.source(), fmt::format("the amount of \"{}\" is no number from -2 to 2", key.str())));
        }
    }

    void top(const toml::table& table) {
        for (const auto& [key, node] : table) {
            if (key == "melanin") {
                fraction(node, "melanin", 0.5, recipe.melanin);
            } else if (key == "blood") {
                fraction(node, "blood", 0.2, recipe.blood);
            } else if (key == "shape" && node.is_table()) {
                shapes(*node.as_table());
            } else {
                problems.push_back(
                    wrong(path, node.source(),
                          fmt::format("a head has no \"{}\"; expected melanin, blood, [shape]", key.str())));
            }
        }
    }
};

}  // namespace

Expected<HeadRecipe> read_head_recipe(const std::filesystem::path& path) {
    std::error_code error;
    if (!std::filesystem::is_regular_file(path, error)) {
        return Problem{Blame::kWrongInput, fmt::format("{}: no such file; expected a head's TOML file", path.string())};
    }
    try {
        const toml::table table = toml::parse_file(path.string());
        Reader reader{path, {}, {}};
        reader.top(table);
        if (!reader.problems.empty()) return reader.problems;
        return reader.recipe;
    } catch (const toml::parse_error& parse) {
        return wrong(path, parse.source(), std::string(parse.description()));
    }
}

}  // namespace understudy
