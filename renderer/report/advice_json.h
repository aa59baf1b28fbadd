// Advice as JSON: the same as its text, in metres, degrees and stops.
#pragma once

#include "advice/fix.h"
#include "report/json_values.h"

namespace understudy {

Json advice_json(const Advice& advice);

}  // namespace understudy
