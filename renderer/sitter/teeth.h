// Teeth and gums in the rows that the head's mesh marks. Seen only between parted lips.
#pragma once

#include "sitter/head_data.h"
#include "sitter/skinned_mesh.h"

namespace understudy {

// Adds both rows to the straight head, the upper one first. `placed` are the positions that the arches number, from
// which the mesh has taken `origin` away.
void set_teeth(SkinnedMesh& mesh, const std::array<ArchMarks, 2>& arches, const std::vector<Double3>& placed,
               const Double3& origin);

}  // namespace understudy
