// The box round a tree of shapes, asked for sixteen rays at once: rays that miss it are sooner told than asked for.
#pragma once

#include <glm/common.hpp>

#include "base/wide.h"

namespace understudy {

struct WideBox {
    Vec3 low{kInfinity}, high{-kInfinity};

    // With a little round it.
    void take(const Vec3& place, float round) {
        low = glm::min(low, place - round);
        high = glm::max(high, place + round);
    }

    WideTruth may_meet(const WideRays& rays) const {
        Wide enter = rays.near;
        Wide leave = rays.far;
        const auto narrow = [&](const Wide& origin, const Wide& direction, float from, float to) {
            const Wide inverse = 1.0F / direction;
            const Wide a = (from - origin) * inverse;
            const Wide b = (to - origin) * inverse;
            enter = larger(smaller(a, b), enter);
            leave = smaller(larger(a, b), leave);
        };
        narrow(rays.origin.x, rays.direction.x, low.x, high.x);
        narrow(rays.origin.y, rays.direction.y, low.y, high.y);
        narrow(rays.origin.z, rays.direction.z, low.z, high.z);
        return ~(enter > leave);
    }
};

}  // namespace understudy
