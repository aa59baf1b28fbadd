// How an uneven light is sampled: for whom it shines, and from where on its front.
//
// Before the front, receivers are sorted into cells by the direction that they lie in and by their distance. Each cell
// has a warp of its own (place_warp.h), by what a few receivers all over it see of the light: a dish's plate stands
// elsewhere for each, and so does the head before an umbrella. A warp is made when the first receiver asks for it, and
// depends on nothing but its cell. It is only a guide: the density that it makes is known exactly.
#pragma once

#include <array>
#include <atomic>
#include <functional>
#include <memory>
#include <vector>

#include "base/geometry.h"
#include "base/wide.h"
#include "kit/density_grid.h"
#include "kit/place_warp.h"

namespace understudy {

// The surface and its light as they are asked for here; everything in the front's own axes.
struct UnevenSurface {
    struct Point {
        Vec3 place;
        Vec3 normal;
    };
    std::function<Point(const Vec2& square)> point_at;
    // What a receiver sees of the light there; 0 where something of the light's own hides it.
    std::function<float(const Point& point, const Vec3& receiver)> radiance;
    float reach = 1.0F;         // the farthest point from the middle, metres
    float widest = 0.5F * kPi;  // from the axis: no light beyond, radians
    bool both_sides = false;    // it shines behind as well
    // Of the square: within each cell that they make it is to be alike.
    PlaceWarp::Breaks across = PlaceWarp::even_breaks(32);
    PlaceWarp::Breaks up = PlaceWarp::even_breaks(32);
    // Every place keeps at least this part of the mean: another receiver of the cell may see more of it.
    float least = 0.1F;
    // By how much less or more the front's edge is turned away from the nearest than from the farthest receivers of a
    // cell than its middle is, radians.
    float parallax_step = 0.2F;
    int looks = 2;  // at each cell of the square, along either side of it
};

class EmissionSampling {
  public:
    explicit EmissionSampling(UnevenSurface surface);
    ~EmissionSampling();
    EmissionSampling(const EmissionSampling&) = delete;
    EmissionSampling& operator=(const EmissionSampling&) = delete;

    // For the receivers of one cell.
    struct Aim {
        PlaceWarp warp;
        std::array<UnevenSurface::Point, kGridPoints> grid;  // where the warp puts the points of the 3 × 3 grid
    };
    // From any number of threads.
    const Aim& aim_at(const Vec3& receiver) const;
    std::array<const Aim*, kLanes> aims_at(const Wide3& receivers) const;

  private:
    static constexpr int kSide = 32;  // cells of directions, along either of two axes
    static constexpr int kDistances = 24;
    static constexpr std::size_t kHalf = std::size_t{kSide} * kSide * kDistances;

    std::size_t cell_of(const Vec3& receiver) const;
    // within: where in the cell, each from 0 to 1.
    Vec3 receiver_in(std::size_t cell, const Vec3& within) const;
    const Aim& aim_of(std::size_t cell) const;
    Aim make_aim(std::size_t cell) const;
    void lay_out();
    float light_of(std::size_t part, const std::vector<Vec3>& receivers) const;

    UnevenSurface surface_;
    // Of the parts that the square is cut into, row by row; looks × looks places in each.
    std::vector<float> areas_;
    std::vector<UnevenSurface::Point> places_;
    float scale_;  // one over the widest direction's place, see cell_of
    mutable std::vector<std::atomic<const Aim*>> aims_;
};

}  // namespace understudy
