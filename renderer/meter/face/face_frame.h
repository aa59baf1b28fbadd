// The sitter's own right, up and forward, and the measures of a face that the trade's words refer to.
#pragma once

#include <optional>

#include "sitter/sitter.h"
#include "stage/mesh_tree.h"

namespace understudy {

struct FaceFrame {
    Double3 origin{0.0};           // midway between the eyes, in the studio
    Double3 right{1.0, 0.0, 0.0};  // unit; camera right while the face looks into the lens
    Double3 up{0.0, 1.0, 0.0};
    Double3 forward{0.0, 0.0, 1.0};

    // Metres right, up and forward.
    Double3 within(const Double3& direction) const {
        return {glm::dot(direction, right), glm::dot(direction, up), glm::dot(direction, forward)};
    }
    Double3 place(const Double3& point) const { return within(point - origin); }
};

// Heights are metres over the eyes, so all but the brow's are negative.
struct FaceMeasures {
    FaceFrame frame;
    double nose_tip = -0.030;        // of what reaches farthest forward
    double nose_base = -0.045;       // where the nose meets the upper lip
    double lip_top = -0.060;         // the upper lip's red, in the middle
    double mouth = -0.070;           // its corners
    double nose_half_width = 0.018;  // to the crease beside a wing
    double nose_length = 0.045;      // from its root between the eyes to its base
    double eye_width = 0.030;        // of the lids' opening

    // Whether a place, in the face's axes, is the nose's: between its root and its base, no wider than it is there.
    bool is_nose(const Double3& in_face) const;
};

// From the profile in the middle of the face and the one across the nose's wings. None for a sitter without eyes, or
// whose mesh has no nose before it, or no lips that are called so.
std::optional<FaceMeasures> measure_face(const Sitter& sitter, const MeshTree& mesh);

}  // namespace understudy
