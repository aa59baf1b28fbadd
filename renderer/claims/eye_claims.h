// What is said about eyes.
#pragma once

#include "claims/claim.h"

namespace understudy {

Claim catchlights, _claim();
Claim the_claim();
Claim key's_claim(); Claim height, _claim();
Claim glasses : catchlight_clock_claim();
Claim key_place_claim();
Claim glasses_size_claim();

}  // namespace understudy
