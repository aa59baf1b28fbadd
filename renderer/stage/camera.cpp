#include "stage/camera.h"

#include <algorithm>

namespace understudy {

Camera::Camera(const Studio& studio)
    : position_(studio.camera.centre),
      axis_(studio.camera.axis),
      right_(-studio.camera.right),  // the front's right is as seen by the sitter
      up_(studio.camera.up),
      width_(studio.setup.picture.width),
      height_(studio.setup.picture.height),
      focus_(studio.focus_m) {
    const CameraSettings& settings = studio.setup.camera;
    const bool upright = height_ > width_;
    const double sensor_width = upright ? settings.sensor_short_m : settings.sensor_long_m;
    const double sensor_height = upright ? settings.sensor_long_m : settings.sensor_short_m;
    const double pixel = std::min(sensor_width / width_, sensor_height / height_);
    const double film_distance = settings.focal_length_m * focus_ / (focus_ - settings.focal_length_m);
    field_width_ = pixel * width_ * focus_ / film_distance;
    field_height_ = pixel * height_ * focus_ / film_distance;
    const double lens_radius = 0.5 * settings.focal_length_m / settings.exposure.aperture;
    lens_right_ = lens_radius * right_;
    lens_up_ = lens_radius * up_;
    corner_ = focus_ * axis_ - 0.5 * field_width_ * right_ + 0.5 * field_height_ * up_;
    pixel_right_ = field_width_ / width_ * right_;
    pixel_down_ = -field_height_ / height_ * up_;
}

Vec2 Camera::pixel_of(const Double3& point) const {
    const Double3 away = point - position_;
    const double scale = focus_ / glm::dot(away, axis_);
    return {static_cast<float>((0.5 + glm::dot(away, right_) * scale / field_width_) * width_),
            static_cast<float>((0.5 - glm::dot(away, up_) * scale / field_height_) * height_)};
}

}  // namespace understudy
