// Places on the skin where a meter is held, found on the straight head and carried along by its triangles.
#pragma once

#include <optional>

#include "sitter/skinned_mesh.h"

namespace understudy {

struct SkinPlace {
    std::uint32_t triangle = 0;
    std::array<double, 3> share{};  // of its corners
};

struct SkinPlaces {
    SkinPlace forehead, nose_bridge, nose_tip, cheek_camera_left, cheek_camera_right, chin, throat, crown;
};

// `mesh` has the midpoint of the eyes at `eye_midpoint`; nothing if a place is not found on it.
std::optional<SkinPlaces> find_places(const SkinnedMesh& mesh, const std::array<Double3, 2>& eyes);

Landmark landmark_at(const SkinPlace& place, const SitterMesh& mesh);
Landmarks landmarks_at(const SkinPlaces& places, const SitterMesh& mesh);

}  // namespace understudy
