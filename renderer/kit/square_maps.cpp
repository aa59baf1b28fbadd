#include "kit/square_maps.h"

#include <algorithm>

namespace understudy {

DiscPoint square_to_disc(const Vec2& square) {
    const std::array<float, 2> place{2.0F * square.x - 1.0F, 2.0F * square.y - 1.0F};
    // Four wedges, each with its own radius along one side of the square; looked up, as branches would be guessed
    // wrong.
    const auto upright = static_cast<std::size_t>(std::abs(place[0]) <= std::abs(place[1]));
    const float radius = place[upright];
    const float ratio = radius != 0.0F ? place[1 - upright] / radius : 0.0F;
    const std::array<float, 4> middles{0.0F, kPi / 2.0F, std::copysign(kPi, -ratio), -kPi / 2.0F};
    const std::array<float, 2> slopes{kPi / 4.0F, -kPi / 4.0F};
    const std::size_t wedge = upright + (radius < 0.0F ? 2 : 0);
    return {std::abs(radius), middles[wedge] + slopes[upright] * ratio};
}

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
