// A jacket over a shirt: shell, lapels and collar.
#pragma once

#include "sitter/skeleton.h"
#include "sitter/wardrobe/sheet.h"

namespace understudy {

void put_on_jacket(SkinnedMesh& mesh, const ClothSheet& body, const BonePivots& pivots);

}  // namespace understudy
