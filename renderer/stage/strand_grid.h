// The sitter's hairs as something to trace: flat ribbons that face every ray, in a grid of their own.
//
// Apart from the mesh, because they are many times slower to ask: the mesh is asked first, and hairs only as far as
// that; and whoever wants skin alone never meets them. Embree's tree of curves took three times as long to build and
// two to four times as long to answer from among the hairs, where most rays come from.
#pragma once

#include <memory>

#include "base/wide.h"
#include "scatter/hair_fibre.h"
#include "sitter/strands.h"
#include "stage/wide_box.h"

namespace understudy {

struct StrandMeeting {
    float distance = kInfinity;  // nothing is met
    std::uint32_t piece = 0;     // the number of the point that it goes from
    float along = 0.0F;          // the piece, 0 … 1
};

// Where a ray meets a hair.
struct StrandPlace {
    const HairFibre* fibre = nullptr;
    Vec3 axis{0.0F};     // the place on its axis
    Vec3 tangent{0.0F};  // unit, from root to tip
    float radius = 0.0F;
    float across = 0.0F;  // see approach_fibre
    StrandKind kind = StrandKind::kHair;

    // Unit, from the axis, square to the fibre, as near to the direction as can be.
    Vec3 outward(const Vec3& direction) const;
    // Rays in this direction start here: clear of the ribbon, whose axis they have crossed.
    Vec3 leave(const Vec3& direction) const { return axis + 1.2F * radius * outward(direction); }
};

class StrandGrid {
  public:
    explicit StrandGrid(const Strands& strands);
    ~StrandGrid();
    StrandGrid(StrandGrid&&) noexcept;
    StrandGrid& operator=(StrandGrid&&) noexcept;
    StrandGrid(const StrandGrid&) = delete;
    StrandGrid& operator=(const StrandGrid&) = delete;

    StrandMeeting meet(const Ray& ray) const;
    StrandPlace place_of(const StrandMeeting& meeting, const Ray& ray) const;
    bool blocks(const Ray& ray) const;
    WideTruth may_meet(const WideRays& rays) const { return box_.may_meet(rays); }

  private:
    struct Inside;
    std::unique_ptr<Inside> inside_;
    WideBox box_;
};

}  // namespace understudy
