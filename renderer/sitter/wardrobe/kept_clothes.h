// Clothes that are laid once over a body and kept.
#pragma once

#include <filesystem>

#include "sitter/wardrobe/clothes.h"

namespace understudy {

// As put_on_clothes, from the folder when this program has laid them over this very body before. An empty folder keeps
// nothing.
void put_on_kept_clothes(SkinnedMesh& mesh, const RefinedHead& body, const BonePivots& pivots,
                         const ClothesSettings& clothes, const std::filesystem::path& folder);

}  // namespace understudy
