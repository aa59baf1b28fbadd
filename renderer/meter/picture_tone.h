// How bright a place comes out in the developed picture.
#pragma once

#include "meter/light_powers.h"
#include "meter/reading.h"
#include "stage/stage.h"

namespace understudy {

class PictureTone {
  public:
    // readings: with the face's, for a white balance as lit. Everything given has to outlive this.
    PictureTone(const Setup& setup, const LitStudio& lit, const std::vector<Reading>& readings);

    // Linear RGB of what the ray meets, 1 = a matt white in the metered light; to a share of its luminance, or a
    // hundredth of mid-grey's.
    Vec3 along(const Stage& stage, const Ray& ray, double relative) const;

  private:
    const Setup& setup_;
    const LitStudio& lit_;
    Spectrum white_;
};

// IEC 61966-2-1's luminance of linear light in BT.709's primaries.
double luminance_of(const Vec3& linear);

}  // namespace understudy
