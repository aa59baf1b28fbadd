// Lashes along the outer edges of the lids, wherever those have been laid.
#pragma once

#include "sitter/hair/growing_head.h"

namespace understudy {

Strands grow_lashes(const GrowingHead& head);

}  // namespace understudy
