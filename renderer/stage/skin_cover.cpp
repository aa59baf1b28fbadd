#include "stage/skin_cover.h"

#include <algorithm>

#include "stage/skin_relief.h"

namespace understudy {

namespace {

// Light that falls into a dimple meets its walls more than once, which colours it as more of the pigments would.
// Chosen by eye, no source.
SkinSpot deepened(SkinSpot spot, float height) {
    constexpr float kDeep = 100.0e-6F;
    const float more = 1.0F + std::clamp(-height / kDeep, -0.3F, 0.6F);
    spot.melanin = std::min(0.5F, spot.melanin * more);
    spot.blood = std::min(0.2F, spot.blood * more);
    return spot;
}

}  // namespace

SkinCover::SkinCover(const SitterMesh& mesh)
    : triangles_(mesh.triangles), positions_(mesh.positions), skin_(mesh.skin), straight_(mesh.straight) {}

SkinSpot SkinCover::spot_at(std::uint32_t triangle, const Vec2& share) const {
    const auto& corners = triangles_[triangle];
    const SkinSpot& a = skin_[corners[0]].spot;
    const SkinSpot& b = skin_[corners[1]].spot;
    const SkinSpot& c = skin_[corners[2]].spot;
    const auto mixed = [&](float SkinSpot::*part) {
        return a.*part + share.x * (b.*part - a.*part) + share.y * (c.*part - a.*part);
    };
    return {mixed(&SkinSpot::melanin), mixed(&SkinSpot::blood), mixed(&SkinSpot::roughness), mixed(&SkinSpot::coat)};
}

SkinCover::Relieved SkinCover::relieved(const Vec3& normal, const SkinSpot& spot, std::uint32_t triangle,
                                        const Vec2& share) const {
    const auto& corners = triangles_[triangle];
    const SkinVertex& a = skin_[corners[0]];
    const SkinVertex& b = skin_[corners[1]];
    const SkinVertex& c = skin_[corners[2]];
    const Vec3 ab = straight_[corners[1]] - straight_[corners[0]];
    const Vec3 ac = straight_[corners[2]] - straight_[corners[0]];
    const Vec3 place = straight_[corners[0]] + share.x * ab + share.y * ac;
    const float pores = a.pores + share.x * (b.pores - a.pores) + share.y * (c.pores - a.pores);
    const float lip = a.lip + share.x * (b.lip - a.lip) + share.y * (c.lip - a.lip);

    // The slope along either edge of the straight triangle is the slope along that edge of the posed one.
    constexpr float kApart = 25.0e-6F;
    const float here = skin_relief(place, pores, lip);
    const auto slope_along = [&](const Vec3& edge) {
        const float length = glm::length(edge);
        return length > 0.0F ? (skin_relief(place + (kApart / length) * edge, pores, lip) - here) * (length / kApart)
                             : 0.0F;
    };
    const float rise_b = slope_along(ab);
    const float rise_c = slope_along(ac);
    const Vec3 e = positions_[corners[1]] - positions_[corners[0]];
    const Vec3 f = positions_[corners[2]] - positions_[corners[0]];
    const float ee = glm::dot(e, e);
    const float ef = glm::dot(e, f);
    const float ff = glm::dot(f, f);
    const float area2 = ee * ff - ef * ef;
    if (!(area2 > 1e-6F * ee * ff)) return {normal, deepened(spot, here)};
    const Vec3 gradient = ((rise_b * ff - rise_c * ef) * e + (rise_c * ee - rise_b * ef) * f) / area2;
    return {glm::normalize(normal - gradient), deepened(spot, here)};
}

}  // namespace understudy
