// The light that leaves a cloth which a flash head shines at: an umbrella's canopy, a frame.
//
// The head is a point on the axis whose beam falls off as a power of the cosine. Within a canopy every point sees every
// other equally (integrating-sphere theory: inside a sphere the kernel cos cos / r² is 1 / 4R²), so what the canopy
// gives itself is a sum over its points once, and a geometric series after that. What it receives from itself, it sends
// on matt. What passes the rim is lost; the shaft is left out.
#pragma once

#include <array>
#include <optional>

#include "kit/ball.h"
#include "kit/canopy.h"
#include "kit/lit_cloth.h"
#include "setup/lit_shapes.h"

namespace understudy {

class HeadLit {
  public:
    explicit HeadLit(const UmbrellaShape& shape);
    HeadLit(const UmbrellaShape& shape, const LitCloth& cloth);
    explicit HeadLit(const FrameShape& shape);

    // For 1 lm past rim and head, 1/(sr·m²). Both in the front's own axes.
    float radiance(const Vec3& place, const Vec3& direction) const;

    // lm out for each lm of the head.
    double share_out() const { return share_out_; }
    // lx on the canopy from itself for each lm of the head: by depth below its middle, 0 … 1.
    float self_light(float share_of_depth) const { return between(self_light_, share_of_depth); }

  private:
    Vec3 normal_at(const Vec3& place) const;  // toward the head
    float head_light(const Vec3& to_head, const Vec3& normal) const;
    float share_of_depth(const Vec3& place) const;
    float raw_radiance(const Vec3& place, const Vec3& direction) const;
    void light_itself();
    double canopy_flux() const;
    bool leaves(const Vec3& place, const Vec3& direction) const;

    LitCloth cloth_;
    Vec3 head_{0.0F};
    Vec3 beam_{0.0F, 0.0F, -1.0F};  // unit, the way the head looks
    float exponent_ = 1.0F;
    std::optional<Canopy> canopy_;  // none: flat
    std::optional<Ball> head_ball_;
    // Of a canopy, the same all round its axis: by depth below its middle.
    static constexpr std::size_t kDepths = 65;
    using ByDepth = std::array<float, kDepths>;
    static float between(const ByDepth& values, float share);
    ByDepth from_head_{};  // lx for 1 lm of the head
    ByDepth self_light_{};
    float scale_ = 1.0F;
    double share_out_ = 1.0;
};

// An umbrella's parts, in the axes that a placed front gives; the front is the middle of the rim, of a shoot-through
// the canopy's middle.
Canopy canopy_of(const UmbrellaShape& shape, const Vec3& front, const Vec3& axis, const Vec3& right, const Vec3& up);
Ball head_of(const UmbrellaShape& shape, const Vec3& front, const Vec3& axis);

}  // namespace understudy
