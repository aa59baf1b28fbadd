// What is said about backdrops and rims.
#pragma once

#include "claims/claim.h"

namespace understudy {

Claim white_backdrop_claim();
Claim rim_level_claim();

}  // namespace understudy
