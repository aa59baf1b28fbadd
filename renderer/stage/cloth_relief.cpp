#include "stage/cloth_relief.h"

#include "sitter/wardrobe/clothes.h"

namespace understudy {

ClothRelief::ClothRelief(const Sitter& sitter)
    : weaves_(static_cast<std::size_t>(Zone::kCount)),
      straight_(sitter.mesh.straight),
      triangles_(sitter.mesh.triangles),
      zones_(sitter.mesh.zones) {
    const auto set = [&](Zone zone, const WeaveOf& weave) { weaves_[static_cast<std::size_t>(zone)] = weave; };
    const ClothesSettings& clothes = sitter.clothes;
    const Fabric outer = fabric_of(clothes);
    const Fabric inner = clothes.outfit == Outfit::kJacket ? Fabric::kCotton : outer;
    const bool knitted = clothes.outfit == Outfit::kCrewNeck || clothes.outfit == Outfit::kHighNeck;
    set(Zone::kTop, {inner, false, {}});
    set(Zone::kCollar, {inner, knitted, sitter.straight_neck});
    set(Zone::kJacket, {outer, false, {}});
    if (sitter.hat) set(Zone::kHat, {Fabric::kFelt, false, {}});
}

Vec3 ClothRelief::bent(const Vec3& normal, std::uint32_t triangle, const Vec2& share) const {
    const auto& weave = weaves_[static_cast<std::size_t>(zones_[triangle])];
    if (!weave) return normal;
    const auto& [a, b, c] = triangles_[triangle];
    const Vec3 straight = (1.0F - share.x - share.y) * straight_[a] + share.x * straight_[b] + share.y * straight_[c];
    // The straight cloth's axes stand in for the posed one's: clothes hardly turn, and grain looks alike turned.
    const Vec3 slope(weave_slope(*weave, Double3(straight)));
    return glm::normalize(normal - slope + glm::dot(slope, normal) * normal);
}

}  // namespace understudy
