// Triangles in an Embree scene of their own.
//
// Medium build quality, one flat scene, single rays, no robust or compact flag: measured to be the fastest for a head
// of this size.
#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <vector>

#include "base/geometry.h"

namespace understudy {

struct MeshMeeting {
    float distance = kInfinity;  // nothing is met
    Vec3 geometric{0.0F};        // not unit
    Vec2 share{0.0F};            // of the triangle's second and third corner
    std::uint32_t triangle = 0;
};

class TriangleScene {
  public:
    // Triangles that will move keep a tree that follows them: a little slower to ask.
    enum class Will { kStay, kMove };
    TriangleScene(const std::vector<Vec3>& positions, const std::vector<std::array<std::uint32_t, 3>>& triangles,
                  Will will = Will::kStay);
    ~TriangleScene();
    TriangleScene(TriangleScene&&) noexcept;
    TriangleScene& operator=(TriangleScene&&) noexcept;
    TriangleScene(const TriangleScene&) = delete;
    TriangleScene& operator=(const TriangleScene&) = delete;

    // Other places of the same corners, of what was made to move: the tree's boxes are fitted to them, which takes a
    // tenth of a new tree's time.
    void move(const std::vector<Vec3>& positions);

    // What a ray meets first.
    MeshMeeting meet(const Ray& ray) const;
    // Only how far that is, or infinity.
    float distance(const Ray& ray) const;
    bool blocks(const Ray& ray) const;

  private:
    struct Inside;
    std::unique_ptr<Inside> inside_;
};

}  // namespace understudy
