// What can be dialled, held, moved and rebuilt: other lights' power, a reflector, the key's stand, its modifier.
#pragma once

#include <vector>

#include "advice/fix.h"

namespace understudy {

// Each is the least that lights both eyes; a kind that cannot is left out. A key whose modifier cannot be moved, a
// window, is left where it is. kit: the folder of modifiers.
std::vector<Fix> stand_fixes(TrialRoom& room, const std::filesystem::path& kit);

// The key's stand with its middle at another place, what it is aimed at kept.
void put_key_at(Setup& setup, const Double3& place);

}  // namespace understudy
