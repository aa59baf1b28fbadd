// What is said about skin.
#pragma once

#include "claims/claim.h"

namespace understudy {

Claim shine_distance_claim();
Claim dark_skin_claim();

}  // namespace understudy
