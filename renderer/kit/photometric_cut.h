// A cut through the light of a photometric file, in a plane that holds its axis.
#pragma once

#include <optional>

#include "kit/photometric_web.h"

namespace understudy {

// At no roll, as seen by someone who looks at the light.
enum class CutPlane {
    kUpright,  // type C: 0-180, with 0 up
    kLevel,    // type C: 90-270, with 90 right
};

// Angles in the plane from straight ahead: positive is up, or right; ±180 is straight back.
double cut_candela(const PhotometricWeb& web, CutPlane plane, double angle_deg);

// From the peak outward to where the intensity has first fallen to a share of it.
struct CutSpread {
    double low_deg = 0.0;
    double high_deg = 0.0;
    double width_deg() const { return high_deg - low_deg; }
};

struct CutProfile {
    double peak_candela = 0.0;
    double peak_at_deg = 0.0;
    std::optional<CutSpread> half;  // none in the dark, and where it never falls so far
    std::optional<CutSpread> tenth;
};

CutProfile cut_profile(const PhotometricWeb& web, CutPlane plane);

}  // namespace understudy
