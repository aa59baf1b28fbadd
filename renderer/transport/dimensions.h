// Which group of the sampler's numbers serves what.
#pragma once

#include <cstddef>
#include <cstdint>

#include "transport/path_light.h"

namespace understudy {

inline constexpr std::uint32_t kFilmAndLens = 0;
inline constexpr std::uint32_t kWave = 1;
// The mirror image in a cornea, and the white under an eye's tears, are followed beside the path itself, with numbers
// of its own.
inline constexpr std::uint32_t kMirrorBranch = 1U << 16;
// So is what the skin's coat mirrors beside what comes from under it.
inline constexpr std::uint32_t kCoatBranch = 1U << 17;
// And so is the one in a lens of glasses, before or behind which there may be a cornea.
inline constexpr std::uint32_t kLensBranch = 1U << 18;

// Where light comes out of what it has wandered in, and which of two layers a path meets.
inline constexpr std::uint32_t kInwardBranch = 1U << 19;

inline constexpr std::uint32_t kGroupsPerVertex = 1 + kMaxLayers / 2;

// Lobe, direction and survival.
inline std::uint32_t dimension_of_scatter(std::uint32_t vertex) { return 2 + vertex * kGroupsPerVertex; }

// The way into the skin.
inline std::uint32_t dimension_of_skin(std::uint32_t vertex) { return (1U << 28) + vertex; }

// Two lights share a group.
inline std::uint32_t dimension_of_lights(std::uint32_t vertex, std::size_t light) {
    return 3 + vertex * kGroupsPerVertex + static_cast<std::uint32_t>(light / 2);
}

}  // namespace understudy
