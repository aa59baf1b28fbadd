// Which places of the face one light reaches, seen as hard: from the middle of its front.
#pragma once

#include <cstdint>
#include <vector>

#include "meter/face/face_view.h"

namespace understudy {

enum class Shade : std::uint8_t {
    kLit,
    kTurnedAway,  // the skin itself faces away from the light
    kNose,        // the nose stands in between
    kOther,       // a brow, hair, a hat, a panel
};

// One a point of the view.
std::vector<Shade> face_shades(const Stage& stage, const FaceView& view, const Vec3& light);

}  // namespace understudy
