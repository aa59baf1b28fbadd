// Puts clothes on a body.
#pragma once

#include "setup/wardrobe_settings.h"
#include "sitter/skeleton.h"
#include "sitter/skinned_mesh.h"

namespace understudy {

// Adds the outfit to the straight head's mesh, whose first positions are the refined head's, and takes away the skin
// that lies deep under it.
void put_on_clothes(SkinnedMesh& mesh, const RefinedHead& body, const BonePivots& pivots,
                    const ClothesSettings& clothes);

// What an outfit is usually made of.
Fabric fabric_of(const ClothesSettings& clothes);

}  // namespace understudy
