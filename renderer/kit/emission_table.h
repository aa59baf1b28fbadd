// What leaves a modifier's front: radiance over place and direction, for 1 lm out of the front.
//
// The front's own axes: x right, y up, z along the axis; places in metres from the front's centre. Symmetry folds the
// front to the smallest part that the rest repeats: a quarter of a rectangle, half a wedge of a regular polygon, one
// radius of anything round, one meridian of a ball. Directions are an angle from the axis (from the surface's own
// normal on a ball) with knots where the light changes, and an azimuth. Between the knots the table is linear in each
// of the four coordinates, and what is linear is scaled so that its flux is exactly 1.
#pragma once

#include <cstdint>
#include <vector>

#include "base/geometry.h"
#include "setup/setup.h"

namespace understudy {

// How the knots lie.
struct EmissionLayout {
    enum class Fold : std::uint32_t { kRectangle, kPolygon, kRound, kBall };
    Fold fold = Fold::kRound;
    // Half the width and height; a polygon's distance from the centre to a side's middle, twice; the outer and the
    // inner radius of what is round; a ball's radius, twice.
    float reach = 0.0F;
    float second_reach = 0.0F;
    std::uint32_t sides = 0;     // of a polygon
    std::uint32_t across = 1;    // knots along the front's first coordinate, at least 2
    std::uint32_t along = 1;     // and along its second: 1 when there is none
    std::uint32_t azimuths = 1;  // 1, or a multiple of 4; of what is round, an odd number from 0 to half a turn
    std::vector<float> angles;   // from the axis, radians, 0 first, rising, at most π/2; no light beyond the last

    // For a shape that has a table: the fold and the reaches. A dome, whose light is traced as geometry, has none.
    static bool folds(const ModifierShape& shape);
    static EmissionLayout of(const ModifierShape& shape);

    bool round() const { return fold == Fold::kRound || fold == Fold::kBall; }
    std::size_t places() const { return static_cast<std::size_t>(across) * along; }
    std::size_t directions() const { return angles.size() * azimuths; }
    std::size_t size() const { return places() * directions(); }
};

// A place of the front, folded: where among the knots it lies, and how a direction there is turned before it is looked
// up. To be kept where the same place is asked again and again.
struct EmissionPlace {
    float across = 0.0F;  // 0 … knots − 1
    float along = 0.0F;
    Vec3 first{1.0F, 0.0F, 0.0F};  // the rows of the turn
    Vec3 second{0.0F, 1.0F, 0.0F};
    Vec3 normal{0.0F, 0.0F, 1.0F};
};

class EmissionTable {
  public:
    // values in the order [across][along][azimuth][angle], in any unit: they are scaled to a flux of 1. At least one
    // has to be above 0, none below.
    EmissionTable(EmissionLayout layout, std::vector<float> values);

    // Radiance for 1 lm out of the front, 1/(sr·m²). place on the front, metres from its centre; direction unit, away
    // from the front; both in the front's axes. 0 behind the surface.
    float radiance(const Vec3& place, const Vec3& direction) const { return radiance(place_of(place), direction); }
    // At the nearest knots: cheap, for densities.
    float rough_radiance(const Vec3& place, const Vec3& direction) const {
        return rough_radiance(place_of(place), direction);
    }

    EmissionPlace place_of(const Vec3& place) const;
    float radiance(const EmissionPlace& place, const Vec3& direction) const;
    float rough_radiance(const EmissionPlace& place, const Vec3& direction) const;

    // lm for the table as it stands, by the exact quadrature of what is linear between the knots: 1.
    double flux() const;
    // What the same flux would be, were it the same everywhere and in every direction.
    float even_radiance() const { return even_radiance_; }

    const EmissionLayout& layout() const { return layout_; }
    const std::vector<float>& values() const { return values_; }

  private:
    struct Turn {
        Vec2 first;
        Vec2 second;
    };
    struct Step {  // between two knots
        std::size_t low = 0;
        std::size_t high = 0;
        float part = 0.0F;
    };
    EmissionPlace polygon_place(const Vec3& place) const;
    EmissionPlace ball_place(const Vec3& place) const;
    Step angle_step(float cosine) const;
    Step azimuth_step(float first, float second) const;

    EmissionLayout layout_;
    std::vector<float> values_;
    float even_radiance_ = 0.0F;
    std::vector<float> sines_;               // sin(angle / 2), the coordinate that the table is linear in
    std::vector<std::uint16_t> first_knot_;  // the last knot at or below each of many equal steps of it
    float side_slope_ = 0.0F;                // of a polygon: half a side's length over its distance from the centre
    std::vector<Turn> turns_;                // of a polygon's sides, from the top one clockwise
};

}  // namespace understudy
