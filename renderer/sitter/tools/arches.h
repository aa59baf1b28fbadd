// The bands that the package keeps for the teeth of each jaw, and the tongue between them.
#pragma once

#include <array>

#include "sitter/head_data.h"
#include "sitter/tools/package.h"

namespace understudy {

// [0] the upper jaw's.
std::array<ArchMarks, 2> find_arches(const Package& package);

// In the package the tongue stays where it is when the jaw drops. Gives it the jaw's way in every expression: that of
// the lower teeth as far back in the mouth.
void let_tongue_follow(Package& package);

}  // namespace understudy
