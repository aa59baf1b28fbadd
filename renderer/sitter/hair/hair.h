// The hair of the head, in the style that was asked for.
#pragma once

#include "sitter/hair/grow_strands.h"
#include "sitter/hair/growing_head.h"

namespace understudy {

Strands grow_hair(const GrowingHead& head, const StrandDetail& detail);

}  // namespace understudy
