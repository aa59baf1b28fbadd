// A lens of glasses: a thin cap of a sphere that mirrors some light and lets the rest pass straight.
#pragma once

#include <optional>

#include "base/wide.h"
#include "kit/flat_front.h"
#include "setup/setup.h"
#include "sitter/sitter.h"

namespace understudy {

struct LensHit {
    float distance = 0.0F;
    Vec3 normal{0.0F};  // away from the sphere's centre, unit
};

class Lens {
  public:
    Lens(const SpectacleLens& place, LensCoating coating);

    std::optional<LensHit> intersect(const Ray& ray) const;
    // False only for rays that miss it.
    WideTruth may_meet(const WideRays& rays) const { return may_meet_ball(rays, middle_, reach_); }

    // The share that is mirrored where a ray meets it; cosine in [0, 1] between ray and normal.
    float mirrors(float cosine) const;
    // The share of the ray's light that passes: 1 for a ray that misses it.
    float passes(const Ray& ray) const;

    const SpectacleLens& place() const { return place_; }

  private:
    SpectacleLens place_;
    LensCoating coating_;
    Vec3 middle_;
    float reach_;
};

}  // namespace understudy
