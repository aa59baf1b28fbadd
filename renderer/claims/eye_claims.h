// What is said about eyes: catchlights, where the key belongs, glasses.
#pragma once

#include "claims/claim.h"

namespace understudy {

Claim catchlight_clock_claim();
Claim key_place_claim();
Claim glasses_size_claim();

}  // namespace understudy
