// The sitter's hairs in an Embree scene of their own, as flat ribbons that face every ray.
//
// Apart from the mesh, because they are many times slower to ask: the mesh is asked first, and hairs only as far as
// that; and whoever wants skin alone never meets them. Flat linear curves were measured to be the fastest kind.
#pragma once

#include <memory>

#include "base/wide.h"
#include "scatter/hair_fibre.h"
#include "sitter/strands.h"
#include "stage/wide_box.h"

namespace understudy {

struct StrandMeeting {
    float distance = kInfinity;  // nothing is met
    std::uint32_t piece = 0;
    float along = 0.0F;  // the piece, 0 … 1
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

class StrandTree {
  public:
    explicit StrandTree(const Strands& strands);
    ~StrandTree();
    StrandTree(StrandTree&&) noexcept;
    StrandTree& operator=(StrandTree&&) noexcept;
    StrandTree(const StrandTree&) = delete;
    StrandTree& operator=(const StrandTree&) = delete;

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
