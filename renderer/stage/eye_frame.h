// Directions of an eye: across, up and out through the pupil.
#pragma once

#include "sitter/sitter.h"

namespace understudy {

// What is fixed to an eye turns with it. Both upright to the axis, unit.
struct EyeFrame {
    Vec3 across{1.0F, 0.0F, 0.0F};  // toward camera right, on a straight head
    Vec3 up{0.0F, 1.0F, 0.0F};
    Vec3 axis{0.0F, 0.0F, 1.0F};

    explicit EyeFrame(const Eye& eye)
        : across(glm::normalize(glm::cross(eye.up, eye.axis))),
          up(glm::cross(eye.axis, Double3(across))),
          axis(eye.axis) {}

    Vec3 to_local(const Vec3& v) const { return {glm::dot(v, across), glm::dot(v, up), glm::dot(v, axis)}; }
    Vec3 to_world(const Vec3& v) const { return v.x * across + v.y * up + v.z * axis; }
};

}  // namespace understudy
