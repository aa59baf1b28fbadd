// Which part of the sitter each face belongs to, judged by what the package's own shapes and bones move.
#pragma once

#include <vector>

#include "sitter/sitter.h"
#include "sitter/tools/package.h"

namespace understudy {

// The closed line on which the lips meet, from the right corner of the mouth along the upper lip; empty when the
// package is another one.
std::vector<std::uint32_t> line_between_lips(const Package& package);

// One zone for each of `faces` (numbers into package.faces).
std::vector<Zone> zones_of(const Package& package, const std::vector<std::size_t>& faces,
                           const std::array<Double3, 2>& eye_centres);

}  // namespace understudy
