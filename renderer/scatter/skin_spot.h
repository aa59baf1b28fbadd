// What skin is like at one place.
#pragma once

#include <cstdint>

namespace understudy {

inline constexpr float kSkinIndex = 1.4F;
// Within the range that Weyrich and others, SIGGRAPH 2006, fitted on faces (Torrance–Sparrow, 0.2 … 0.5).
inline constexpr float kSkinRoughness = 0.3F;
inline constexpr float kLeastSkinRoughness = 0.10F;
inline constexpr float kMostSkinRoughness = 0.60F;

struct SkinSpot {
    float melanin = 0.02F;             // volume fraction of melanosomes in the epidermis, 0 … 0.5
    float blood = 0.02F;               // volume fraction of blood in the dermis, 0 … 0.2
    float roughness = kSkinRoughness;  // of the coat: GGX alpha
    float coat = 1.0F;  // of what a clean boundary to air reflects, the share that this one does, 0 … 1
};

// Which of a skin's two ways of sending light back are asked for.
enum class SkinPart : std::uint8_t { kBoth, kCoat, kFromBelow };

}  // namespace understudy
