// The names that surfaces go by.
#pragma once

#include <string_view>
#include <utility>
#include <vector>

#include "setup/setup.h"

namespace understudy {

using NamedFinishes = std::vector<std::pair<std::string_view, Finish>>;

// For panels, backdrops and walls alike: greys, metals, papers.
const NamedFinishes& plain_finishes();

// Diffusion cloths, for panels.
const NamedFinishes& cloth_finishes();

}  // namespace understudy
