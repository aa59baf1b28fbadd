// What is said about exposure, meters and ratios.
#pragma once

#include "claims/claim.h"

namespace understudy {

Claim inverse_square_claim();
Claim dome_direction_claim();
Claim three_to_one_claim();

}  // namespace understudy
