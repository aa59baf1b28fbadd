// A scene file made ready: what every command begins with.
#pragma once

#include <memory>

#include "base/expected.h"
#include "cli/scene_wish.h"
#include "meter/meter.h"

namespace understudy {

// Where this program's own kit, heads and head mesh are.
Library own_library();

// On standard error, once a command: hair and clothes that cannot be kept cost time.
void tell_if_sitters_are_not_kept();

struct Rehearsal {
    Studio studio;
    std::unique_ptr<Stage> stage;   // with the sitter
    std::unique_ptr<Stage> nobody;  // the same studio without
};

// Placed, and checked for what only geometry shows. No light is traced.
Expected<Rehearsal> rehearse(const Setup& setup, Growing growing = Growing::kAll);

// The same for a scene file.
Expected<Rehearsal> open_rehearsal(const SceneWish& scene, Growing growing = Growing::kAll);

// The lights at their powers, and the pupils as wide as the standing light leaves them.
Expected<LitStudio> light_rehearsal(Rehearsal& rehearsal);

struct MeteredRehearsal {
    LitStudio lit;
    MeterReport report;
};
Expected<MeteredRehearsal> meter_rehearsal(Rehearsal& rehearsal);

}  // namespace understudy
