// An eye seen near: a longer lens at the camera's own place.
#pragma once

#include <cstddef>

#include "stage/studio.h"

namespace understudy {

struct CloseUp {
    int width = 0;  // pixels
    int height = 0;
    double field_m = 0.0;  // how much it shows across, in the eye's distance
};

// The same studio with its camera turned to an eye of the sitter's, 0 camera left, 1 camera right. Perspective, what is
// mirrored in the eye and how sharp it is are those of the picture, because the lens has not moved, is as wide and is
// in focus at the same distance. Hair stays as wide as it was grown for the picture; lashes and brows are true anyway.
Studio close_up_of_eye(Studio studio, std::size_t eye, const CloseUp& view);

}  // namespace understudy
