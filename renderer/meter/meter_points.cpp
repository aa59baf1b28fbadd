#include "meter/meter_points.h"

namespace understudy {

namespace {

// The receptor floats this far above what it is held against.
constexpr double kAbove = 1e-4;

MeterPoint on_surface(const std::string& name, const Double3& position, const Double3& normal) {
    return {name, Receptor::kFlat, Facing::kSurface, position + kAbove * normal, normal, false};
}

}  // namespace

std::vector<MeterPoint> meter_points(const Studio& studio) {
    std::vector<MeterPoint> points;
    const Double3 face = studio.face;
    const Double3 to_camera = glm::normalize(studio.camera.centre - face);
    const Double3 to_key = glm::normalize(studio.lights.front().centre - face);
    for (const Receptor receptor : {Receptor::kFlat, Receptor::kDome}) {
        points.push_back({"face", receptor, Facing::kCamera, face, to_camera, true});
        points.push_back({"face", receptor, Facing::kKey, face, to_key, true});
    }
    const Sitter& sitter = studio.sitter;
    if (sitter.kind == Sitter::Kind::kBall) {
        points.push_back(on_surface("front", face + Double3(0.0, 0.0, sitter.ball_radius_m), {0.0, 0.0, 1.0}));
    }
    if (sitter.landmarks) {
        const Landmarks& marks = *sitter.landmarks;
        const auto add = [&](const std::string& name, const Landmark& mark) {
            points.push_back(on_surface(name, mark.position, mark.normal));
        };
        add("forehead", marks.forehead);
        add("nose-bridge", marks.nose_bridge);
        add("nose-tip", marks.nose_tip);
        add("cheek-camera-left", marks.cheek_camera_left);
        add("cheek-camera-right", marks.cheek_camera_right);
        add("chin", marks.chin);
        add("throat", marks.throat);
        add("crown", marks.crown);
    }
    if (studio.setup.backdrop) points.push_back(on_surface("backdrop", studio.points.backdrop, {0.0, 0.0, 1.0}));
    return points;
}

}  // namespace understudy
