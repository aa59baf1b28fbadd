// Lips at rest touch: the mesh's own stand a little apart.
#pragma once

#include "sitter/refine.h"

namespace understudy {

// Takes up to a millimetre and a half of the gap between the lips, half of it from either, and less and less of their
// skin away from it. What an expression opens beyond that stays open.
void close_lips(RefinedHead& head);

}  // namespace understudy
