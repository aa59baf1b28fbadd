// The frames of a sheet of poses: for each movement the pose as set, two frames either way, and what holds in them.
#pragma once

#include <string>
#include <vector>

#include "advice/envelope.h"
#include "cli/compare_films.h"
#include "sheet/sheet.h"

namespace understudy {

inline constexpr int kPoseColumns = 5;

struct PoseFrame {
    Movement movement = Movement::kTurn;
    double by = 0.0;  // from how it is set
    Lapse lapse;      // nothing where everything holds
};

// Row by row, a movement each: past its limit, at it, as set, at the other limit, past that. Where nothing ends a
// movement, halfway and as far as it was tried.
std::vector<PoseFrame> pose_frames(const Envelope& envelope);

// What is traced for them: a film for each pose, one for all that are as set.
Comparison comparison_of(const std::vector<PoseFrame>& frames, const Setup& setup, const Envelope& envelope,
                         const FilmCard& card, const MeterReport& report);

ContactSheet sheet_of(const Envelope& envelope, const std::vector<PoseFrame>& frames,
                      const std::vector<CellPictures>& pictures);

}  // namespace understudy
