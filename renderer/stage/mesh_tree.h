// The sitter's mesh in an Embree scene: the only place that knows Embree.
//
// Medium build quality, one flat scene, single rays, no robust or compact flag: measured to be the fastest for a head
// of this size.
#pragma once

#include <algorithm>
#include <memory>
#include <optional>

#include <glm/common.hpp>

#include "base/geometry.h"
#include "sitter/sitter.h"

namespace understudy {

struct MeshHit {
    float distance = 0.0F;
    Vec3 geometric{0.0F};  // unit, outward
    Vec3 shading{0.0F};    // unit, interpolated
    Vec3 position{0.0F};
    Vec3 lifted{0.0F};  // where rays that leave start: see lifted_origin
    std::uint32_t triangle = 0;
    Zone zone = Zone::kFace;
};

class MeshTree {
  public:
    explicit MeshTree(const SitterMesh& mesh);
    ~MeshTree();
    MeshTree(MeshTree&&) noexcept;
    MeshTree& operator=(MeshTree&&) noexcept;
    MeshTree(const MeshTree&) = delete;
    MeshTree& operator=(const MeshTree&) = delete;

    std::optional<MeshHit> intersect(const Ray& ray) const;
    bool blocks(const Ray& ray) const;
    // False for a ray that misses the mesh's box, which is sooner told than asked for.
    bool may_meet(const Ray& ray) const {
        const Vec3 inverse = 1.0F / ray.direction;
        const Vec3 a = (low_ - ray.origin) * inverse;
        const Vec3 b = (high_ - ray.origin) * inverse;
        const Vec3 in = glm::min(a, b);
        const Vec3 out = glm::max(a, b);
        const float enter = std::max(std::max(in.x, in.y), std::max(in.z, ray.near));
        const float leave = std::min(std::min(out.x, out.y), std::min(out.z, ray.far));
        return !(enter > leave);
    }
    // The bare query, without what makes a hit useful: how far, or infinity. For measuring.
    float distance(const Ray& ray) const;
    // Is the point on the inner side of the skin? By the first surface met along several directions.
    bool encloses(const Vec3& point) const;
    Zone zone_of(std::uint32_t triangle) const;

  private:
    struct Inside;
    std::unique_ptr<Inside> inside_;
    Vec3 low_{kInfinity}, high_{-kInfinity};  // the box, a hair wider than the mesh
};

}  // namespace understudy
