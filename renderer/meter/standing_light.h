// The light that is on all the time, and the pupils that go with it: room light, lamps, and the modelling lamps of
// flash heads, each through its head's modifier.
#pragma once

#include "meter/light_powers.h"
#include "stage/stage.h"

namespace understudy {

// A pupil that the scene gives is taken as it is. Without any standing light the usual one is.
PupilReading read_pupil(const Studio& studio, const Stage& nobody, const LitStudio& lit);

}  // namespace understudy
