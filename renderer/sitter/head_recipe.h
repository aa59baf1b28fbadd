// A head of the library as its TOML file says it: how much of each shape, and the skin.
#pragma once

#include <filesystem>

#include "base/expected.h"
#include "sitter/head_data.h"

namespace understudy {

struct HeadRecipe {
    ShapeAmounts shapes;
    double melanin = 0.02;  // volume fraction of melanosomes in the epidermis
    double blood = 0.02;    // volume fraction of blood in the dermis
};

Expected<HeadRecipe> read_head_recipe(const std::filesystem::path& path);

}  // namespace understudy
