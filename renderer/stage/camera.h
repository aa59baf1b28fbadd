// A thin lens before a flat film.
//
// The film stands where the lens draws what is in focus, at v = f·d / (d − f) behind it; the picture is the largest
// part of the sensor that has its shape. A picture taller than wide turns the camera upright.
#pragma once

#include "base/geometry.h"
#include "kit/square_maps.h"
#include "stage/studio.h"

namespace understudy {

// The point of the lens that a pinhole would be at.
inline constexpr Vec2 kLensMiddle(0.5F, 0.5F);

class Camera {
  public:
    explicit Camera(const Studio& studio);

    // film: pixels from the picture's top left corner; lens: a point of the unit square.
    Ray ray(const Vec2& film, const Vec2& lens) const {
        const DiscVector<float> disc = square_to_disc_vector(lens.x, lens.y);
        const Vec2 across = disc.radius * Vec2(disc.x, disc.y);
        const Double3 off = static_cast<double>(across.x) * lens_right_ + static_cast<double>(across.y) * lens_up_;
        const Double3 sharp =
            corner_ + static_cast<double>(film.x) * pixel_right_ + static_cast<double>(film.y) * pixel_down_;
        // Places in double, the way between them in single precision: a fifth of a micrometre at two metres.
        return {Vec3(position_ + off), glm::normalize(Vec3(sharp - off))};
    }

    // Where a point is drawn through the lens's middle, in pixels from the top left corner. The point lies before the
    // lens.
    Vec2 pixel_of(const Double3& point) const;

    const Double3& position() const { return position_; }
    const Double3& axis() const { return axis_; }
    const Double3& right() const { return right_; }  // of the picture
    const Double3& up() const { return up_; }

  private:
    Double3 position_, axis_, right_, up_;
    double width_ = 0.0, height_ = 0.0;              // pixels
    double field_width_ = 0.0, field_height_ = 0.0;  // metres, in the plane that is in focus
    double focus_ = 0.0;
    Double3 lens_right_{0.0}, lens_up_{0.0};  // the lens's radius
    // In the plane that is in focus, from the lens's middle: the picture's top left corner, and a pixel's steps.
    Double3 corner_{0.0}, pixel_right_{0.0}, pixel_down_{0.0};
};

}  // namespace understudy
