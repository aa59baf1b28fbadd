// Beard on the jaw, the chin and the upper lip.
#pragma once

#include "sitter/hair/grow_strands.h"
#include "sitter/hair/growing_head.h"

namespace understudy {

Strands grow_beard(const GrowingHead& head, const StrandDetail& detail);

}  // namespace understudy
