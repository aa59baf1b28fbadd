// Eyebrows along the ridge over the eyes.
#pragma once

#include "sitter/hair/growing_head.h"

namespace understudy {

Strands grow_brows(const GrowingHead& head);

}  // namespace understudy
