#include "meter/cloth_change.h"

namespace understudy {
namespace {

// Where an inner cloth hangs in the usual box, in parts of its depth, and how far off its walls; common practice, no
// source.
constexpr double kInnerClothBehindFront = 0.36;
constexpr double kInnerClothGap = 0.05;

}  // namespace

std::optional<ModifierSettings> with_cloth_out(const ModifierSettings& modifier) {
    if (!modifier.construction) return std::nullopt;
    ModifierSettings changed = modifier;
    Construction& built = *changed.construction;
    if (built.inner_cloth) {
        built.inner_cloth.reset();
        return changed;
    }
    if (built.body != Construction::Body::kBowl || !built.front_cloth) return std::nullopt;
    built.front_cloth.reset();
    return changed;
}

std::optional<ModifierSettings> with_cloth_in(const ModifierSettings& modifier) {
    if (!modifier.construction) return std::nullopt;
    ModifierSettings changed = modifier;
    Construction& built = *changed.construction;
    if (built.body == Construction::Body::kBox && !built.inner_cloth) {
        built.inner_cloth = InnerCloth{kInnerClothBehindFront * built.depth_m, kInnerClothGap, {}};
        return changed;
    }
    if (built.body != Construction::Body::kBowl || built.front_cloth || built.grid) return std::nullopt;
    built.front_cloth = DiffusingCloth{};
    return changed;
}

}  // namespace understudy
