// A backdrop that is painted in soft-edged blotches of two tones.
//
// Gradient noise (stage/gradient_noise.h) over the studio's metres, so that paint runs on over wall, sweep and floor.
// Four octaves, each turned against the one before.
#pragma once

#include <cstdint>
#include <vector>

#include "scatter/surface.h"
#include "setup/setup.h"

namespace understudy {

class MottledPaint {
  public:
    explicit MottledPaint(const Mottled& mottled);

    // The share of the second tone at a place in the studio, 0 … 1; on average ½.
    float share_at(const Vec3& place) const;
    const Surface& surface_at(const Vec3& place) const;

  private:
    float scale_m_;
    std::uint32_t seed_;
    std::vector<Surface> tones_;  // from the first to the second in steps too fine to be seen
};

}  // namespace understudy
