// What is said about size, distance and cloth.
#pragma once

#include "claims/claim.h"

namespace understudy {

Claim feathering_claim();
Claim diffusion_claim();
Claim closer_claim();
Claim box_distance_claim();

}  // namespace understudy
