// What can be dialled, held, moved and rebuilt: other lights' power, a reflector, the key's stand, its modifier.
#pragma once

#include <filesystem>
#include <vector>

#include "advice/way.h"

namespace understudy {

// room: as asked for. A key whose modifier cannot be moved, a window, is left where it is. kit: the folder of
// modifiers.
std::vector<Way> stand_ways(const TrialRoom& room, const std::filesystem::path& kit);

// The key's stand with its middle at another place, what it is aimed at kept.
void put_key_at(Setup& setup, const Double3& place);

}  // namespace understudy
