// A thin lens before a flat film.
//
// The film stands where the lens draws what is in focus, at v = f·d / (d − f) behind it; the picture is the largest
// part of the sensor that has its shape. A picture taller than wide turns the camera upright.
#pragma once

#include "base/geometry.h"
#include "stage/studio.h"

namespace understudy {

class Camera {
  public:
    explicit Camera(const Studio& studio);

    // film: pixels from the picture's top left corner; lens: a point of the unit square.
    Ray ray(const Vec2& film, const Vec2& lens) const;

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
    double lens_radius_ = 0.0;
};

}  // namespace understudy
