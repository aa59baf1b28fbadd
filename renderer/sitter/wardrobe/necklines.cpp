#include "sitter/wardrobe/necklines.h"

#include <algorithm>
#include <cmath>

namespace understudy {
namespace {

// Over a plane that lies `under` the neck's base at the front and rises toward the nape, and to the sides by `dip` at
// 75 mm from the middle.
Outline round_the_neck(const Double3& neck_base, double under, double rise, double dip) {
    return [=](const SheetPoint& point) {
        const Double3 p = point.skin - neck_base;
        const double aside = p.x / 0.075;
        return p.y + under + rise * (p.z - 0.087) - dip * aside * aside;
    };
}

// Positive inside the V that opens toward the neck: about the distance from its sides.
double in_the_v(const Double3& p, const ShirtFront& front) {
    if (p.z < 0.0) return -1.0;
    const double up = p.y + front.open_to_m;
    const double slope = front.half_width_m / (front.open_to_m - 0.03);
    return (slope * up - std::abs(p.x)) / std::hypot(1.0, slope);
}

}  // namespace

Outline crew_neckline(const Double3& neck_base) { return round_the_neck(neck_base, 0.062, 0.55, 0.030); }

Outline high_neckline(const Double3& neck_base) { return round_the_neck(neck_base, -0.012, 0.45, 0.0); }

Outline strapless_edge(const BonePivots& pivots) {
    const Double3 neck_base = pivots[kNeck1];
    return [neck_base](const SheetPoint& point) {
        const Double3 p = point.skin - neck_base;
        const double arm = static_cast<double>(point.weights[kLeftArm]) + static_cast<double>(point.weights[kRightArm]);
        const double curve = 0.016 * std::cos(p.x / 0.055) * (p.z > 0.0 ? 1.0 : 0.0);
        return std::max(p.y + 0.168 + curve, 0.12 * (arm - 0.45));
    };
}

Outline collar_seam(const Double3& neck_base) { return round_the_neck(neck_base, 0.050, 0.50, 0.020); }

Outline shirt_opening(const Double3& neck_base, const ShirtFront& front) {
    const Outline seam = collar_seam(neck_base);
    return [=](const SheetPoint& point) { return std::max(seam(point), in_the_v(point.skin - neck_base, front)); };
}

Outline placket(const Double3& neck_base, const ShirtFront& front) {
    return [=](const SheetPoint& point) {
        const Double3 p = point.skin - neck_base;
        if (p.z < 0.0) return 1.0;
        return std::max(std::abs(p.x - 0.004) - 0.016, p.y + front.open_to_m + 0.002);
    };
}

}  // namespace understudy
