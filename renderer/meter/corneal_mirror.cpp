#include "meter/corneal_mirror.h"

#include <algorithm>

namespace understudy {

MirrorPoint mirror_point(const Double3& centre, double radius, const Double3& light, const Double3& camera) {
    const Double3 to_light = glm::normalize(light - centre);
    const Double3 to_camera = glm::normalize(camera - centre);
    const double angle = std::acos(std::clamp(glm::dot(to_light, to_camera), -1.0, 1.0));
    const auto normal_at = [&](double from_camera) {
        if (angle < 1e-9) return to_camera;
        return glm::normalize((std::sin(angle - from_camera) * to_camera + std::sin(from_camera) * to_light) /
                              std::sin(angle));
    };
    // The angle to the camera grows with the normal's turn away from it, the angle to the light falls.
    const auto excess = [&](double from_camera) {
        const Double3 normal = normal_at(from_camera);
        const Double3 point = centre + radius * normal;
        return glm::dot(normal, glm::normalize(light - point)) - glm::dot(normal, glm::normalize(camera - point));
    };
    double low = 0.0;
    double high = angle;
    for (int i = 0; i < 50; ++i) {
        const double middle = 0.5 * (low + high);
        (excess(middle) < 0.0 ? low : high) = middle;
    }
    const Double3 normal = normal_at(0.5 * (low + high));
    return {centre + radius * normal, normal};
}

}  // namespace understudy
