// A light's power in the notation of the head that makes it.
#pragma once

#include "meter/reading.h"
#include "stage/studio.h"

namespace understudy {

double joules_at(const FlashHead& head, int steps_from_full);

// What is told of a light, its energy and efficacy known, and with it the setting of its head's dial, the ways out when
// that is out of range, and its modelling lamp. Unchanged for a light without a head.
LightPower with_head(const Studio& studio, std::size_t light, LightPower told);

}  // namespace understudy
