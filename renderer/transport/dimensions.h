// Which group of the sampler's numbers serves what.
#pragma once

#include <cstddef>
#include <cstdint>

#include "transport/path_light.h"

namespace understudy {

inline constexpr std::uint32_t kFilmAndLens = 0;
inline constexpr std::uint32_t kWave = 1;
// The mirror image in a cornea is followed beside the path itself, with numbers of its own.
inline constexpr std::uint32_t kMirrorBranch = 1U << 16;
// And so is the one in a lens of glasses, before or behind which there may be a cornea.
inline constexpr std::uint32_t kLensBranch = 1U << 17;

inline constexpr std::uint32_t kGroupsPerVertex = 1 + kMaxLayers / 2;

// Lobe, direction and survival.
inline std::uint32_t dimension_of_scatter(std::uint32_t vertex) { return 2 + vertex * kGroupsPerVertex; }

// Two lights share a group.
inline std::uint32_t dimension_of_lights(std::uint32_t vertex, std::size_t light) {
    return 3 + vertex * kGroupsPerVertex + static_cast<std::uint32_t>(light / 2);
}

}  // namespace understudy
