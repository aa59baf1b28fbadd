// Cloth laid over the body, before anything is cut from it.
#pragma once

#include "sitter/skeleton.h"
#include "sitter/wardrobe/sheet.h"

namespace understudy {

// The skin under the jaw, with neck, trunk and arms, as a sheet that lies on itself.
ClothSheet body_sheet(const RefinedHead& head);

// What is worn under a garment evens the flesh out: from the garment's edge on, the trunk under it and the mesh's skin
// lose what is narrower than four centimetres.
void hold_in(SkinnedMesh& mesh, ClothSheet& body, const Outline& worn);

// How a layer hangs.
struct Hang {
    double clearance_m = 0.002;  // of its outside over the skin, at least
    double ease_m = 0.005;       // by how much more where it hangs freely
    double reach_m = 0.030;      // of what it bridges: what is narrower is spanned, what is wider is followed
    double folds_m = 0.002;      // how deep its folds are
    double fold_length_m = 0.14;
    // How freely it hangs at a place, 0 … 1: where it is 0 it lies on the skin without folds.
    std::function<double(const SheetPoint&)> freely;
};

// Folds run from the armpits and down from the shoulders; `seed` tells one layer's folds from another's.
ClothSheet laid(const ClothSheet& body, const Hang& hang, const BonePivots& pivots, unsigned seed);

// The sheet moved outward.
ClothSheet raised(ClothSheet sheet, double by_m);

}  // namespace understudy
