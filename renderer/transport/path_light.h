// What one path brings back, light by light.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>

#include "scatter/light4.h"
#include "stage/stage.h"

namespace understudy {

// Fifteen lights and the ambient.
inline constexpr std::size_t kMaxLayers = 16;

// For each layer, at the path's four wavelengths: what comes back of that light at unit power, were it of equal energy
// at every wavelength.
using LayerLights = std::array<Light4, kMaxLayers>;

// A bit for each layer.
using LayerBits = std::uint32_t;
inline constexpr LayerBits kAllLayers = (1U << kMaxLayers) - 1U;

// What a path had brought back when it first met the backdrop, and when it first met the room's walls, floor or
// ceiling. All that it brings after that came by way of them: with the thing painted black it would be missing.
struct PathDetours {
    std::optional<LayerLights> before_backdrop;
    std::optional<LayerLights> before_room;

    void meet(Thing thing, const LayerLights& so_far) {
        if (thing == Thing::kBackdrop && !before_backdrop) before_backdrop = so_far;
        if (thing == Thing::kWall && !before_room) before_room = so_far;
    }
};

struct PathLight {
    LayerLights layers{};
    LayerLights by_hair{};  // of these, what has met only pale hair (transport/hair_bands.h)
    // Of these, what a cornea or a lens mirrors of the light itself: the same at every wavelength.
    std::array<float, kMaxLayers> glints{};
    LayerBits asked = kAllLayers;    // nothing is brought of the others
    std::uint32_t rays = 0;          // traced for it
    std::uint32_t given_up = 0;      // walks under the skin that grew too long
    PathDetours* detours = nullptr;  // noted when given, by a path that does not divide
};

}  // namespace understudy
