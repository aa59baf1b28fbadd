// What the sitter can do: look, tip, turn, step.
#pragma once

#include <vector>

#include "advice/fix.h"

namespace understudy {

// Each is the least that lights both eyes; a kind that cannot is left out.
std::vector<Fix> sitter_fixes(TrialRoom& room);

}  // namespace understudy
