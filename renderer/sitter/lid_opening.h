// The lids drawn together or apart from their natural opening: blinking, squinting, staring.
#pragma once

#include "setup/sitter_settings.h"
#include "sitter/lid_margins.h"

namespace understudy {

// Every distance between the upper and the lower lid becomes `opening` times what it is in `laid`, whose inner edges
// lie on the eye: 1 leaves all as it is, 0 closes the eye. `opening` in [0, kWidestLids]. In a blink the upper lid does
// nearly all of the way and the lower one hardly rises (M. G. Doane, "Interaction of eyelids and tears in corneal
// wetting and the dynamics of the normal human eyeblink", Am. J. Ophthalmol. 89, 1980, 507); its share is from
// memory. Closed lids overlap by a little, so that no light comes between them.
LidMargins drawn_to(const Eye& eye, const LidMargins& laid, double opening);

}  // namespace understudy
