#include "sitter/wardrobe/jacket.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "sitter/wardrobe/body_cloth.h"
#include "sitter/wardrobe/collar.h"

namespace understudy {
namespace {

constexpr double kInside = 0.015;

// The jacket's lines, from the neck's base: right of the middle, up. A single-breasted front with a notch; sizes by
// eye.
constexpr double kButtonDown = 0.315;   // where the fronts meet
constexpr double kRollTop = 0.062;      // half the opening's width …
constexpr double kRollTopDown = 0.020;  // … at the side of the neck
struct Corner {
    double x, y;
};
// The lapel: from the top of the roll line out along the gorge to its tip, then down in a curve to the button.
constexpr std::size_t kCurve = 16;
using Lapel = std::array<Corner, kCurve + 3>;
Lapel lapel_corners() {
    constexpr Corner kTip{0.124, -0.072};
    constexpr Corner kPull{0.122, -0.205};  // of the curve: a parabola's third corner
    constexpr Corner kButton{0.001, -kButtonDown};
    Lapel corners{{{kRollTop - 0.004, -kRollTopDown}, {0.074, -0.052}}};
    for (std::size_t i = 0; i <= kCurve; ++i) {
        const double t = static_cast<double>(i) / kCurve;
        const double a = (1.0 - t) * (1.0 - t);
        const double b = 2.0 * t * (1.0 - t);
        const double c = t * t;
        corners.at(i + 2) = {a * kTip.x + b * kPull.x + c * kButton.x, a * kTip.y + b * kPull.y + c * kButton.y};
    }
    return corners;
}

// Half the opening's width at a height.
double roll_line(double y) {
    const double share = std::clamp((y + kButtonDown) / (kButtonDown - kRollTopDown), 0.0, 1.2);
    return kRollTop * std::pow(share, 0.85);
}

// Signed distance from a closed polygon, negative inside; after the crossing rule of Jordan's curve theorem.
double outside_polygon(const Lapel& corners, double x, double y) {
    double nearest = 1e9;
    bool inside = false;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Corner a = corners.at(i);
        const Corner b = corners.at((i + 1) % corners.size());
        const double ex = b.x - a.x;
        const double ey = b.y - a.y;
        const double t = std::clamp(((x - a.x) * ex + (y - a.y) * ey) / (ex * ex + ey * ey), 0.0, 1.0);
        nearest = std::min(nearest, std::hypot(x - a.x - t * ex, y - a.y - t * ey));
        if ((a.y > y) != (b.y > y) && x < a.x + (y - a.y) / ey * ex) inside = !inside;
    }
    return inside ? -nearest : nearest;
}

// The jacket without lapels and collar.
Outline shell_outline(const Double3& neck_base) {
    return [neck_base](const SheetPoint& point) {
        const Double3 p = point.skin - neck_base;
        const double neck = p.y + 0.052 + 0.50 * (p.z - 0.087) - 0.012 * (p.x / 0.075) * (p.x / 0.075);
        const double front = p.z > 0.0 ? roll_line(p.y) + 0.002 - std::abs(p.x) : -1.0;
        return std::max(neck, front);
    };
}

Outline lapel_outline(const Double3& neck_base, double side) {
    return [neck_base, side, corners = lapel_corners()](const SheetPoint& point) {
        const Double3 p = point.skin - neck_base;
        if (p.z < 0.0 || side * p.x < -0.02) return 1.0;
        return std::max(outside_polygon(corners, side * p.x, p.y), roll_line(p.y) - 0.0015 - side * p.x);
    };
}

Outline jacket_seam(const Double3& neck_base) {
    return [neck_base](const SheetPoint& point) {
        const Double3 p = point.skin - neck_base;
        return p.y + 0.050 + 0.50 * (p.z - 0.087) - 0.012 * (p.x / 0.075) * (p.x / 0.075);
    };
}

}  // namespace

void put_on_jacket(SkinnedMesh& mesh, const ClothSheet& body, const BonePivots& pivots) {
    const Double3& neck_base = pivots[kNeck1];
    const Outline seam = jacket_seam(neck_base);
    const auto freely = [seam](const SheetPoint& point) { return smooth_step(-seam(point) / 0.08); };
    ClothSheet layer = laid(body, {0.0105, 0.0110, 0.100, 0.0040, 0.24, freely}, pivots, 21);
    // Padded shoulders.
    for (SheetPoint& point : layer.points) {
        const Double3 shoulder = point.skin.x < 0.0 ? pivots[kRightArm] : pivots[kLeftArm];
        const Double3 away = point.skin - shoulder - Double3(0.0, 0.03, 0.0);
        point.place.y += 0.010 * std::exp(-glm::dot(away, away) / (2.0 * 0.045 * 0.045));
    }
    set_normals(layer);
    sew(mesh, cut(layer, shell_outline(neck_base)), 0.0022, Zone::kJacket, kInside);
    for (const double side : {-1.0, 1.0}) {
        sew(mesh, cut(raised(layer, 0.0032), lapel_outline(neck_base, side)), 0.0026, Zone::kJacket, kInside);
    }
    CollarCut shape;
    shape.stand_nape_m = 0.030;
    shape.stand_front_m = 0.006;
    shape.fall_nape_m = 0.040;
    shape.fall_front_m = 0.036;
    shape.spread = 0.0;
    shape.clearance_m = 0.0075;
    sew(mesh, collar(neck_seam(layer, seam, neck_base, 52.0, 121), shape, layer), 0.0030, Zone::kJacket, kInside);
}

}  // namespace understudy
