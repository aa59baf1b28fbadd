#include "sitter/landmarks.h"

#include <cmath>

#include "sitter/ray_triangle.h"

namespace understudy {
namespace {

struct Hit {
    SkinPlace place;
    double distance = 0.0;
};

// The first skin along a ray.
std::optional<Hit> first_skin(const SkinnedMesh& mesh, const Double3& origin, const Double3& way) {
    std::optional<Hit> best;
    for (std::uint32_t t = 0; t < mesh.triangles.size(); ++t) {
        const auto& k = mesh.triangles[t];
        const auto met = meet_front(origin, way, {mesh.positions[k[0]], mesh.positions[k[1]], mesh.positions[k[2]]});
        if (!met || (best && met->distance >= best->distance)) continue;
        best = Hit{{t, {1.0 - met->b - met->c, met->b, met->c}}, met->distance};
    }
    return best;
}

constexpr double kFarOff = 0.5;  // metres before the face, where rays start

std::optional<Hit> from_the_front(const SkinnedMesh& mesh, const Double3& at) {
    return first_skin(mesh, at + Double3(0.0, 0.0, kFarOff), {0.0, 0.0, -1.0});
}

// The vertex of a zone that reaches farthest forward; its height above the eyes is where the ray is shot.
std::optional<Double3> foremost(const SkinnedMesh& mesh, Zone zone, double half_width) {
    std::optional<Double3> best;
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        if (mesh.zones[t] != zone) continue;
        for (const auto v : mesh.triangles[t]) {
            const Double3& p = mesh.positions[v];
            if (std::abs(p.x) < half_width && (!best || p.z > best->z)) best = p;
        }
    }
    return best;
}

}  // namespace

std::optional<SkinPlaces> find_places(const SkinnedMesh& mesh, const std::array<Double3, 2>& eyes) {
    // A little off the middle, where a ray would run along edges of the mesh.
    constexpr double kAside = 0.0001;
    const Double3 middle = 0.5 * (eyes[0] + eyes[1]) + Double3(kAside, 0.0, 0.0);
    const double apart = glm::distance(eyes[0], eyes[1]);
    const auto tip = foremost(mesh, Zone::kNose, 0.01);
    const auto jut = foremost(mesh, Zone::kChin, 0.01);
    if (!tip || !jut) return std::nullopt;
    // Distances in eye spacings (about 62 mm), so that they grow with the face.
    const auto forehead = from_the_front(mesh, middle + apart * Double3(0.0, 0.70, 0.0));
    const auto bridge = from_the_front(mesh, middle + apart * Double3(0.0, -0.05, 0.0));
    const auto nose = from_the_front(mesh, {kAside, tip->y, 0.0});
    const auto left = from_the_front(mesh, eyes[0] + apart * Double3(-0.10, -0.42, 0.0));
    const auto right = from_the_front(mesh, eyes[1] + apart * Double3(0.10, -0.42, 0.0));
    const auto chin = from_the_front(mesh, {kAside, jut->y, 0.0});
    const auto throat = from_the_front(mesh, {kAside, jut->y - 0.95 * apart, 0.0});
    const auto crown = first_skin(mesh, middle + Double3(0.0, kFarOff, -1.3 * apart), {0.0, -1.0, 0.0});
    if (!forehead || !bridge || !nose || !left || !right || !chin || !throat || !crown) return std::nullopt;
    return SkinPlaces{forehead->place, bridge->place, nose->place,   left->place,
                      right->place,    chin->place,   throat->place, crown->place};
}

Landmark landmark_at(const SkinPlace& place, const SitterMesh& mesh) {
    Landmark landmark{Double3(0.0), Double3(0.0)};
    const auto& corners = mesh.triangles[place.triangle];
    for (std::size_t k = 0; k < 3; ++k) {
        landmark.position += place.share.at(k) * Double3(mesh.positions[corners.at(k)]);
        landmark.normal += place.share.at(k) * Double3(mesh.normals[corners.at(k)]);
    }
    landmark.normal = glm::normalize(landmark.normal);
    return landmark;
}

Landmarks landmarks_at(const SkinPlaces& p, const SitterMesh& mesh) {
    return {landmark_at(p.forehead, mesh),
            landmark_at(p.nose_bridge, mesh),
            landmark_at(p.nose_tip, mesh),
            landmark_at(p.cheek_camera_left, mesh),
            landmark_at(p.cheek_camera_right, mesh),
            landmark_at(p.chin, mesh),
            landmark_at(p.throat, mesh),
            landmark_at(p.crown, mesh)};
}

}  // namespace understudy
