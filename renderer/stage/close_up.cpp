#include "stage/close_up.h"

#include <algorithm>
#include <cassert>

#include <glm/geometric.hpp>

#include "sitter/eye.h"

namespace understudy {
namespace {

// The camera's place and its way up stay.
PlacedFront turned_to(const PlacedFront& camera, const Double3& target) {
    PlacedFront turned = camera;
    turned.axis = glm::normalize(target - camera.centre);
    turned.up = glm::normalize(camera.up - glm::dot(camera.up, turned.axis) * turned.axis);
    turned.right = glm::cross(turned.up, turned.axis);
    return turned;
}

}  // namespace

Studio close_up_of_eye(Studio studio, std::size_t eye, const CloseUp& view) {
    assert(studio.sitter.eyes && eye < 2);
    const Double3 target = iris_centre((*studio.sitter.eyes)[eye]);
    const double distance = glm::length(target - studio.camera.centre);
    const double along = glm::dot(target - studio.camera.centre, studio.camera.axis);
    studio.camera = turned_to(studio.camera, target);
    studio.focus_m *= distance / along;

    PictureSettings& picture = studio.setup.picture;
    picture.width = view.width;
    picture.height = view.height;
    CameraSettings& camera = studio.setup.camera;
    // The sensor's width that the picture takes, as stage/camera.cpp cuts it.
    const bool upright = view.height > view.width;
    const double across = upright ? camera.sensor_short_m : camera.sensor_long_m;
    const double down = upright ? camera.sensor_long_m : camera.sensor_short_m;
    const double film_width = std::min(across, down * view.width / view.height);
    // In focus at d, the film at f d / (d − f): the field in the eye's distance is film_width (d − f) / f · distance /
    // d.
    const double enlarged = view.field_m * studio.focus_m / (film_width * distance);
    const double lens_width = camera.focal_length_m / camera.exposure.aperture;
    camera.focal_length_m = studio.focus_m / (1.0 + enlarged);
    camera.exposure.aperture = camera.focal_length_m / lens_width;
    return studio;
}

}  // namespace understudy
