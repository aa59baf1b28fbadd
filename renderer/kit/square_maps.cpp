#include "kit/square_maps.h"

#include <algorithm>

namespace understudy {

Vec2 disc_to_square(const DiscPoint& point) {
    const float r = point.radius;
    float angle = point.angle;
    if (angle < -kPi / 4.0F) angle += 2.0F * kPi;
    float a = 0.0F;
    float b = 0.0F;
    if (angle < kPi / 4.0F) {
        a = r;
        b = angle * a / (kPi / 4.0F);
    } else if (angle < 3.0F * kPi / 4.0F) {
        b = r;
        a = -(angle - kPi / 2.0F) * b / (kPi / 4.0F);
    } else if (angle < 5.0F * kPi / 4.0F) {
        a = -r;
        b = (angle - kPi) * a / (kPi / 4.0F);
    } else {
        b = -r;
        a = -(angle - 3.0F * kPi / 2.0F) * b / (kPi / 4.0F);
    }
    return {std::clamp(0.5F * (a + 1.0F), 0.0F, 1.0F), std::clamp(0.5F * (b + 1.0F), 0.0F, 1.0F)};
}

}  // namespace understudy
