// The flash tube as a chain of small luminous balls, or one ball: what shines inside a modifier.
//
// A ball of even radiance shines alike to all sides, and so does the chain as a whole. The tube casts no shadow of its
// own: its glass and its glow let pass what comes back to it.
#pragma once

#include <vector>

#include "base/geometry.h"
#include "kit/walk_numbers.h"
#include "setup/construction.h"

namespace understudy {

struct TubeSample {
    std::size_t ball;
    Vec3 direction;  // unit, from the receiver
    float distance;
    float density;  // 1/sr, the choice of the ball included
};

struct TubePhoton {
    Vec3 origin;
    Vec3 direction;
};

class FlashTube {
  public:
    // at: the tube's middle along the axis.
    FlashTube(const Tube& tube, float at);

    // For 1 lm out of the bare tube; less what its glass takes. 1/(sr·m²)
    float radiance() const { return radiance_; }
    // lm that leave it for 1 lm out of the bare tube.
    float flux() const { return flux_; }

    // A direction toward one of the balls; density 0 from inside one.
    TubeSample sample(const Vec3& receiver, WalkNumbers& random) const;
    TubePhoton photon(WalkNumbers& random) const;

    // Calls count(density of sample() for this ball) for every ball that the ray meets before so far.
    template <class Count>
    void each_met(const Vec3& origin, const Vec3& direction, float far, Count count) const {
        for (const Vec3& centre : centres_) {
            const Vec3 toward = centre - origin;
            const float along = glm::dot(toward, direction);
            if (along <= 0.0F || along >= far) continue;
            const Vec3 aside = toward - along * direction;
            if (glm::dot(aside, aside) < radius_ * radius_) count(density_toward(glm::dot(toward, toward)));
        }
    }

  private:
    // Even over the cone in which a ball is seen.
    float density_toward(float distance2) const;
    float cone_depth(float distance2) const;

    std::vector<Vec3> centres_;
    float radius_ = 0.0F;
    float radiance_ = 0.0F;
    float flux_ = 1.0F;
};

}  // namespace understudy
