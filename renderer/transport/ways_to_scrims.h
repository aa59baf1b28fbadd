// Ways on from a vertex that are sent toward the cloths that light goes through.
//
// Such a cloth is a second source: no shadow ray reaches the light behind it, and the ways that a surface chooses for
// itself meet it too seldom. So a vertex that faces one sends half its ways there. Both kinds of ways together have the
// density share · p_cloth + (1 − share) · p_own, which every way is weighed by whichever kind it is (Veach and Guibas,
// "Optimally Combining Sampling Techniques for Monte Carlo Rendering", SIGGRAPH 1995, the one-sample model).
#pragma once

#include <optional>
#include <vector>

#include "stage/stage.h"
#include "transport/light_sample.h"

namespace understudy {

class WaysToScrims {
  public:
    WaysToScrims() = default;
    WaysToScrims(const std::vector<Scrim>& scrims, const Receiver& receiver) : receiver_(receiver.position) {
        for (const Scrim& scrim : scrims) {
            for (const Emitter* side : {&scrim.front, &scrim.back}) {
                const auto square = side->density_for(receiver.position, receiver.normal, receiver.response);
                if (square) faced_.push_back({side, *square});
            }
        }
    }

    // Of the ways on.
    float share() const { return faced_.empty() ? 0.0F : 0.5F; }

    // u in [0, 1)³: u.x chooses the cloth. Unit.
    Vec3 sample(const Vec3& u) const;
    // With which `sample` chooses the direction, per unit solid angle.
    float density(const Vec3& direction) const;
    bool leads_there(const Vec3& direction) const;
    // Of both kinds of ways, given the density of the vertex's own.
    float with_own(float own, const Vec3& direction) const {
        if (faced_.empty()) return own;
        return share() * density(direction) + (1.0F - share()) * own;
    }

  private:
    struct Faced {
        const Emitter* side;
        SquareDensity square;
    };
    Vec3 receiver_{0.0F};
    std::vector<Faced> faced_;
};

}  // namespace understudy
