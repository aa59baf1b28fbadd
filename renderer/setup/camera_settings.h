// The camera of a scene file.
#pragma once

#include "setup/placement_settings.h"

namespace understudy {

struct Focus {
    enum class On { kNearEye, kFace, kBackdrop, kDistance };
    On on = On::kNearEye;
    double distance_m = 0.0;  // from the lens, for kDistance
};

// What decides how bright a given light is in the picture.
struct ExposureSettings {
    double aperture = 4.0;
    double shutter_s = 1.0 / 200.0;
    double iso = 200.0;
};

struct CameraSettings {
    double focal_length_m = 0.085;
    double sensor_long_m = 0.036;
    double sensor_short_m = 0.024;
    Placement placement;  // its StandPlacement's distance is from lens to face
    ExposureSettings exposure;
    Focus focus;
};

}  // namespace understudy
