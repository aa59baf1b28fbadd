// Which readings tell what the backdrop sends back on the sitter.
#pragma once

#include "meter/reading.h"

namespace understudy {

// The face under a dome toward the camera, and the cheeks or the ball's front.
inline bool tells_what_is_sent_back(const Reading& reading) {
    const bool face =
        reading.point == "face" && reading.receptor == Receptor::kDome && reading.facing == Facing::kCamera;
    return face || reading.point == "front" || reading.point.starts_with("cheek-");
}

}  // namespace understudy
