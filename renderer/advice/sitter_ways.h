// What the sitter can do: look, tip, turn, step.
#pragma once

#include <vector>

#include "advice/way.h"

namespace understudy {

// room: as asked for. None for a sitter without a face.
std::vector<Way> sitter_ways(const TrialRoom& room);

}  // namespace understudy
