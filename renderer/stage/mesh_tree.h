// The sitter's mesh as rays meet it: a scene of triangles, and beside it what a hit needs to know of each.
#pragma once

#include <memory>
#include <optional>

#include "base/wide.h"
#include "sitter/sitter.h"
#include "stage/triangle_scene.h"
#include "stage/wide_box.h"

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
    explicit MeshTree(const SitterMesh& mesh, TriangleScene::Will will = TriangleScene::Will::kStay);
    ~MeshTree();
    MeshTree(MeshTree&&) noexcept;
    MeshTree& operator=(MeshTree&&) noexcept;
    MeshTree(const MeshTree&) = delete;
    MeshTree& operator=(const MeshTree&) = delete;

    // The same mesh in another pose, of a tree that was made to move.
    void move(const SitterMesh& mesh);
    bool is_of(const SitterMesh& mesh) const;  // as many triangles: the same mesh, were it posed alike

    // What a ray meets first; asks for the memory that hit_at will read.
    MeshMeeting meet(const Ray& ray) const;
    MeshHit hit_at(const MeshMeeting& meeting) const;
    std::optional<MeshHit> intersect(const Ray& ray) const;
    bool blocks(const Ray& ray) const;
    // False for rays that miss the mesh's box.
    WideTruth may_meet(const WideRays& rays) const { return box_.may_meet(rays); }
    // The bare query, without what makes a hit useful: how far, or infinity. For measuring.
    float distance(const Ray& ray) const;
    // Is the point on the inner side of the skin? By the first surface met along several directions.
    bool encloses(const Vec3& point) const;
    Zone zone_of(std::uint32_t triangle) const;

  private:
    struct Inside;
    std::unique_ptr<Inside> inside_;
    WideBox box_;
};

}  // namespace understudy
