// Glasses, fitted to a straight head: they rest on its nose and its ears.
#pragma once

#include "setup/wardrobe_settings.h"
#include "sitter/skinned_mesh.h"

namespace understudy {

// Adds the frame to the mesh and returns the two lenses, [0] before the sitter's right eye. eyes: the eyeballs'
// centres, [0] the sitter's right.
std::vector<SpectacleLens> put_on_glasses(SkinnedMesh& mesh, const std::array<Double3, 2>& eyes,
                                          const GlassesSettings& glasses);

// A point of the lens by its place in the lens's plane, from the middle to the right and up.
Double3 lens_point(const SpectacleLens& lens, double x, double y);

}  // namespace understudy
