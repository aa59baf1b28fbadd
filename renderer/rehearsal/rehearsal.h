// A scene made ready to be traced and metered.
#pragma once

#include <memory>

#include "base/expected.h"
#include "meter/meter.h"
#include "stage/studio.h"

namespace understudy {

struct Rehearsal {
    Studio studio;
    std::unique_ptr<Stage> stage;   // with the sitter
    std::unique_ptr<Stage> nobody;  // the same studio without
};

// Placed, and checked for what only geometry shows. No light is traced but through modifiers that are not kept.
Expected<Rehearsal> rehearse(const Setup& setup, const Library& library, Growing growing = Growing::kAll);

// With the setup's head loaded before.
Expected<Rehearsal> rehearse(const Setup& setup, const Library& library, const HeadPointer& head,
                             Growing growing = Growing::kAll);

// The lights' powers, and how wide the standing light leaves the pupils.
Expected<LitStudio> read_lights(const Studio& studio, const Stage& nobody);

// The same, and the pupils are that wide.
Expected<LitStudio> light_rehearsal(Rehearsal& rehearsal);

struct MeteredRehearsal {
    LitStudio lit;
    MeterReport report;
};
Expected<MeteredRehearsal> meter_rehearsal(Rehearsal& rehearsal);

}  // namespace understudy
