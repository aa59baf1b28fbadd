// A modifier with one layer of cloth fewer or more, as its owner would change it between two frames.
#pragma once

#include <optional>

#include "setup/setup.h"

namespace understudy {

// A box's inner cloth, a bowl's front cloth. None when there is no such cloth to take out or to hang, or when it is not
// known what the modifier is built of.
std::optional<ModifierSettings> with_cloth_out(const ModifierSettings& modifier);
std::optional<ModifierSettings> with_cloth_in(const ModifierSettings& modifier);

}  // namespace understudy
