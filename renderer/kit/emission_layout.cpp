// Where the knots lie: close where the light changes, none where there is none.

#include <algorithm>
#include <cmath>

#include "kit/grid_cells.h"
#include "kit/trace_emission.h"

namespace understudy {

namespace {

struct AngleKnots {
    int count;
    double widest;        // radians
    double towards_axis;  // the power that draws them to the axis
};

AngleKnots angle_knots(const Construction& construction) {
    using Body = Construction::Body;
    AngleKnots knots{10, 0.5 * kPiDouble, 1.0};
    if (!construction.front_cloth) {
        knots = construction.body == Body::kParabola ? AngleKnots{36, knots.widest, 2.0}
                                                     : AngleKnots{32, knots.widest, 1.25};
    }
    if (construction.grid) {
        knots = {construction.front_cloth ? 16 : 24, std::min(grid_reach(*construction.grid), 1.55), 1.0};
    }
    return knots;
}

std::uint32_t places_over(float length, float step, std::uint32_t most) {
    return std::clamp(static_cast<std::uint32_t>(std::lround(length / step)) + 1, 5U, most);
}

}  // namespace

EmissionLayout emission_layout(const Construction& construction, const ModifierShape& front) {
    EmissionLayout layout = EmissionLayout::of(front);
    const bool cloth = construction.front_cloth.has_value();
    using Fold = EmissionLayout::Fold;
    if (layout.fold == Fold::kRectangle) {
        const float step = 0.11F * std::sqrt(layout.reach * layout.second_reach);
        layout.across = places_over(layout.reach, step, 20);
        layout.along = places_over(layout.second_reach, step, 20);
    } else if (layout.fold == Fold::kPolygon) {
        layout.across = 13;
        layout.along = 5;
    } else if (layout.fold == Fold::kRound) {
        layout.across = cloth ? 17 : 33;
    } else {
        layout.across = 13;
    }
    layout.azimuths = layout.round() ? (cloth ? 7 : 17) : (cloth ? 8 : 16);
    const AngleKnots knots = angle_knots(construction);
    for (int i = 0; i < knots.count; ++i) {
        const double share = std::pow(static_cast<double>(i) / (knots.count - 1), knots.towards_axis);
        layout.angles.push_back(static_cast<float>(share * knots.widest));
    }
    return layout;
}

}  // namespace understudy
