// How an uneven light is sampled: where on its front the light comes from, and roughly in which directions.
//
// Two warps one after the other. The first spreads the unit square over the front by the light that each place gives
// (place_warp.h); what is left over place and direction is averaged over the neighbourhoods of a 3 × 3 grid and kept
// for a few hundred directions, as one more factor of the grid's weights. Both are only guides: the density that they
// make is known exactly, so that they may be as coarse as they are.
#pragma once

#include <array>
#include <functional>
#include <vector>

#include "base/geometry.h"
#include "kit/place_warp.h"

namespace understudy {

// The surface and its light as they are asked for here; everything in the front's own axes.
struct UnevenSurface {
    struct Point {
        Vec3 place;
        Vec3 normal;  // of the side that faces the axis's way
    };
    std::function<Point(const Vec2& square)> point_at;
    std::function<float(const Vec3& place, const Vec3& direction)> radiance;
};

class EmissionSampling {
  public:
    explicit EmissionSampling(const UnevenSurface& surface);

    const PlaceWarp& warp() const { return warp_; }

    // Where a direction (its parts across the front) is kept; beyond what holds nearly all light, at the edge.
    std::size_t cell_of(float right, float up) const { return cell(up * scale_) * kSide + cell(right * scale_); }
    // The factor of a grid point, 0 … 8.
    float rough(std::size_t grid_point, std::size_t direction_cell) const {
        return rough_[direction_cell * kStride + grid_point];
    }

  private:
    EmissionSampling(const UnevenSurface& surface, float reach);

    static constexpr std::size_t kSide = 16;
    static constexpr std::size_t kStride = 9;
    static std::size_t cell(float place) {
        constexpr auto kHalf = 0.5F * static_cast<float>(kSide);
        return static_cast<std::size_t>(std::min(std::max(0.0F, kHalf + kHalf * place), 2.0F * kHalf - 0.5F));
    }

    PlaceWarp warp_;
    float scale_ = 1.0F;  // one over the sine within which nearly all light lies
    std::vector<float> rough_;
};

}  // namespace understudy
