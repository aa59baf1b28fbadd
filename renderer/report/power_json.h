// The report's JSON on how strong each light is, its head's dial and the ways out of range, and the pupils.
#pragma once

#include "meter/reading.h"
#include "report/json_values.h"

namespace understudy {

Json power_json(const LightPower& power);
Json pupil_json(const PupilReading& pupil);

}  // namespace understudy
