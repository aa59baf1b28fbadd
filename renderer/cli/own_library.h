// What this program brings along, and scenes made ready with it: what every command begins with.
#pragma once

#include "cli/scene_wish.h"
#include "rehearsal/rehearsal.h"

namespace understudy {

// Where this program's own kit, heads and head mesh are.
Library own_library();

// On standard error, once a command: hair and clothes that cannot be kept cost time.
void tell_if_sitters_are_not_kept();

// Of the own library. On standard error: modifiers that cannot be kept.
Expected<Rehearsal> rehearse(const Setup& setup, Growing growing = Growing::kAll);

// The same for a scene file.
Expected<Rehearsal> open_rehearsal(const SceneWish& scene, Growing growing = Growing::kAll);

}  // namespace understudy
