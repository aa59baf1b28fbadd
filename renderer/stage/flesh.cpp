#include "stage/flesh.h"

#include <utility>

#include "sitter/eye.h"

namespace understudy {

namespace {

// On the side of a lid that lies on the eye, or in the socket behind.
bool faces_an_eye(const Sitter& sitter, const std::array<std::uint32_t, 3>& corners) {
    if (!sitter.eyes) return false;
    constexpr float kReach = static_cast<float>(kEyeballRadius) + 0.006F;
    const auto& mesh = sitter.mesh;
    for (const Eye& eye : *sitter.eyes) {
        bool inner = true;
        for (const auto corner : corners) {
            const Vec3 away = mesh.positions[corner] - Vec3(eye.centre);
            inner = inner && glm::length(away) < kReach && glm::dot(away, mesh.normals[corner]) < 0.0F;
        }
        if (inner) return true;
    }
    return false;
}

// What comes after the neck is worn, or wet.
bool is_skin(Zone zone) { return zone <= Zone::kNeck && zone != Zone::kMouth; }

}  // namespace

Flesh::Flesh(const Sitter& sitter) : Flesh(sitter.mesh, skin_of(sitter)) {}

Flesh::Flesh(const SitterMesh& mesh, Skin skin)
    : numbers_(std::move(skin.numbers)),
      scene_(mesh.positions, skin.triangles),
      grid_(mesh.positions, skin.triangles) {}

Flesh::Skin Flesh::skin_of(const Sitter& sitter) {
    Skin skin;
    const SitterMesh& mesh = sitter.mesh;
    for (std::uint32_t t = 0; t < mesh.triangles.size(); ++t) {
        const Zone zone = mesh.zones[t];
        if (!is_skin(zone) || faces_an_eye(sitter, mesh.triangles[t])) continue;
        skin.triangles.push_back(mesh.triangles[t]);
        skin.numbers.push_back(t);
    }
    return skin;
}

std::optional<Flesh::Wall> Flesh::wall(const Ray& ray) const {
    MeshMeeting meeting = scene_.meet(ray);
    if (meeting.distance == kInfinity) return std::nullopt;
    meeting.triangle = numbers_[meeting.triangle];
    return Wall{meeting.distance, meeting, glm::dot(meeting.geometric, ray.direction) > 0.0F};
}

}  // namespace understudy
