// How light meets an eye: the outside as two spheres, the way in to the iris, and the way out.
//
// The chamber between cornea and iris is filled with one medium of the cornea's index. Computed in double precision
// about the eyeball's centre: a few micrometres matter to a mirror image.
#pragma once

#include <optional>

#include "base/wide.h"
#include "kit/flat_front.h"
#include "sitter/eye.h"

namespace understudy {

struct EyeHit {
    float distance = 0.0F;
    Vec3 normal{0.0F};    // outward, unit
    bool cornea = false;  // else the white of the eye
};

// The first meeting with the eye's outside.
std::optional<EyeHit> intersect_eye(const Eye& eye, const Ray& ray);
// False only for rays that miss the eye: most pass far from it, which single precision tells.
inline WideTruth may_meet_eye(const Eye& eye, const WideRays& rays) {
    constexpr float kWide = 0.0134F;
    static_assert(kApexAhead < 0.0133);
    return may_meet_ball(rays, Vec3(eye.centre), kWide);
}

// Where light that is inside the cornea ends.
struct IrisHit {
    Vec3 position{0.0F};
    Vec3 normal{0.0F};    // toward the chamber
    float radius = 0.0F;  // from the pupil's centre, metres
    bool on_iris = true;  // else the chamber's rim, between iris and limbus
};

// From a point just inside the cornea; none when the light leaves through the cornea again without meeting the iris.
std::optional<IrisHit> reach_iris(const Eye& eye, const Vec3& inside, const Vec3& direction);

// The way out from a point of the iris, straight through; the loss by reflection is counted. For the meter, which reads
// what comes to the eye from outside, and for what surfaces send; light from the lights is bent
// (stage/cornea_refraction.h).
struct WayOut {
    Vec3 position{0.0F};  // on the cornea
    Vec3 normal{0.0F};    // outward
    float transmittance = 0.0F;
};

// None when the light meets the chamber's rim instead.
std::optional<WayOut> leave_through_cornea(const Eye& eye, const Vec3& iris, const Vec3& direction);

}  // namespace understudy
