// The skin behind the lids told from the face's.
#pragma once

#include "sitter/refine.h"

namespace understudy {

// Makes what lies behind the lids' inner edges part of the inside (Zone::kSocket): the lids' lining and the sockets,
// which belong to neither skin nor what a camera may see.
void set_sockets_apart(RefinedHead& head);

}  // namespace understudy
