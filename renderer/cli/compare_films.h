// The pictures of a comparison: each film traced once and developed for every cell that shares it.
#pragma once

#include <atomic>
#include <functional>
#include <optional>
#include <vector>

#include "cli/compare_cells.h"
#include "film/display_picture.h"

namespace understudy {

struct CellPictures {
    DisplayPicture picture;
    std::vector<DisplayPicture> eyes;  // camera left, camera right; none without eyes
};

struct TraceWish {
    int samples = 0;                             // camera paths a pixel; 0: as each scene says
    std::function<void(double share)> progress;  // of the whole, 0 … 1
    const std::atomic<bool>* cancel = nullptr;
    bool as_traced = false;  // not cleaned of noise
};

// One for each cell. None when it was interrupted.
Expected<std::optional<std::vector<CellPictures>>> trace_pictures(const Comparison& comparison, const TraceWish& wish);

}  // namespace understudy
