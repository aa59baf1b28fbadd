#include "stage/skin_relief.h"

#include <algorithm>
#include <cmath>

#include "base/mottle.h"

namespace understudy {

namespace {

// Sizes as textbooks of dermatology give them, from memory: pores 0.2 to 0.5 mm wide and about a millimetre apart, the
// net of lines 0.3 to 1 mm wide and up to some 50 µm deep, on the face at the shallow end.
constexpr float kPoreCell = 0.95e-3F;
constexpr float kPoreRadius = 0.24e-3F;
constexpr float kPoreDepth = 50.0e-6F;
constexpr float kLineCell = 0.75e-3F;
constexpr float kLineDepth = 16.0e-6F;
// The grooves of lips. By eye, no source.
constexpr float kGrooveAcross = 1.3e-3F;
constexpr float kGrooveAlong = 8.0e-3F;
constexpr float kGrooveDepth = 120.0e-6F;

// A dimple in every cell that has its pore near the surface; each pore has its own size.
float pore_depth(const Vec3& place) {
    const Vec3 at = place / kPoreCell;
    const Vec3 cell(std::floor(at.x - 0.5F), std::floor(at.y - 0.5F), std::floor(at.z - 0.5F));
    float depth = 0.0F;
    for (unsigned k = 0; k < 8; ++k) {
        const Vec3 own =
            cell + Vec3(static_cast<float>(k & 1U), static_cast<float>((k >> 1U) & 1U), static_cast<float>(k >> 2U));
        const std::uint32_t bits = cell_bits(static_cast<int>(own.x), static_cast<int>(own.y), static_cast<int>(own.z));
        const auto part = [bits](unsigned shift) { return static_cast<float>((bits >> shift) & 255U) / 255.0F; };
        const Vec3 pore = own + Vec3(0.2F + 0.6F * part(0), 0.2F + 0.6F * part(8), 0.2F + 0.6F * part(16));
        const float radius = kPoreRadius / kPoreCell * (0.7F + 0.6F * part(24));
        const Vec3 away = at - pore;
        const float near = 1.0F - glm::dot(away, away) / (radius * radius);
        if (near > 0.0F) depth += near * near * (0.5F + 0.5F * part(24));
    }
    return depth;
}

}  // namespace

float skin_relief(const Vec3& place, float pores, float lip) {
    float height = 0.0F;
    if (pores > 0.0F) height -= kPoreDepth * pores * pore_depth(place);
    // Lines and grooves are where the noise passes through 0.
    const float line = std::abs(mottle_at(place / kLineCell));
    height += kLineDepth * (1.0F - lip) * (std::min(1.0F, 3.0F * line) - 0.6F);
    if (lip > 0.0F) {
        const Vec3 groove(place.x / kGrooveAcross, place.y / kGrooveAlong, place.z / kGrooveAlong);
        const float ridge =
            std::abs(mottle_at(groove)) + 0.25F * std::abs(mottle_at(2.1F * groove + Vec3(5.0F, 3.0F, 1.0F)));
        height += kGrooveDepth * lip * (std::min(1.0F, 1.6F * ridge) - 0.6F);
    }
    return height;
}

}  // namespace understudy
