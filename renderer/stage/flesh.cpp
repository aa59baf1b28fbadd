#include "stage/flesh.h"

#include <algorithm>
#include <utility>

#include "stage/eye_optics.h"

namespace understudy {

namespace {

constexpr float kThickestLid = 0.006F;  // and more than any lid

// What comes after the neck is worn or wet; the caruncle is wet skin.
bool is_skin(Zone zone) { return (zone <= Zone::kNeck && !is_inside(zone)) || zone == Zone::kCaruncle; }

}  // namespace

Flesh::Flesh(const Sitter& sitter) : Flesh(sitter, skin_of(sitter)) {}

Flesh::Flesh(const Sitter& sitter, Skin skin)
    : numbers_(std::move(skin.numbers)),
      scene_(sitter.mesh.positions, skin.triangles),
      grid_(sitter.mesh.positions, skin.triangles) {
    if (sitter.eyes) eyes_.assign(sitter.eyes->begin(), sitter.eyes->end());
}

Flesh::Skin Flesh::skin_of(const Sitter& sitter) {
    Skin skin;
    const SitterMesh& mesh = sitter.mesh;
    for (std::uint32_t t = 0; t < mesh.triangles.size(); ++t) {
        const Zone zone = mesh.zones[t];
        if (!is_skin(zone)) continue;
        skin.triangles.push_back(mesh.triangles[t]);
        skin.numbers.push_back(t);
    }
    return skin;
}

std::optional<Flesh::Wall> Flesh::mesh_wall(const Ray& ray) const {
    MeshMeeting meeting = scene_.meet(ray);
    if (meeting.distance == kInfinity) return std::nullopt;
    meeting.triangle = numbers_[meeting.triangle];
    return Wall{meeting.distance, meeting, glm::dot(meeting.geometric, ray.direction) > 0.0F};
}

namespace {

// Where the ray leaves the eye: the place, the way out, and how far.
std::optional<EyeHit> way_out_of(const Eye& eye, const Ray& ray) {
    auto hit = intersect_eye(eye, ray);
    if (hit && glm::dot(hit->normal, ray.direction) < 0.0F) {
        hit = intersect_eye(eye, {ray.origin, ray.direction, hit->distance + 1e-6F, ray.far});
    }
    if (!hit || glm::dot(hit->normal, ray.direction) <= 0.0F) return std::nullopt;
    return hit;
}

}  // namespace

std::optional<Flesh::Wall> Flesh::eye_wall(const Eye& eye, const Ray& ray, bool into_air) const {
    const auto hit = way_out_of(eye, ray);
    if (!hit) return std::nullopt;
    const Ray out{ray.at(hit->distance), hit->normal, 0.0F, kThickestLid};
    const auto lid = into_air ? std::nullopt : mesh_wall(out);
    if (lid && lid->from_within) return std::nullopt;
    return Wall{hit->distance, {}, true, out};
}

std::optional<Flesh::Wall> Flesh::wall(const Ray& ray) const {
    auto wall = mesh_wall(ray);
    if (wall && wall->from_within) return wall;
    // The eyes end the flesh before the air does.
    Ray shorter = ray;
    if (wall) shorter.far = wall->distance;
    // Skin met from without: the ray has slipped out between lid and eye.
    const bool into_air = wall.has_value();
    for (const Eye& eye : eyes_) {
        if (const auto on_eye = eye_wall(eye, shorter, into_air)) return on_eye;
    }
    return wall;
}

bool Flesh::clear_of_eyes(const Vec3& from, float distance) const {
    return std::all_of(eyes_.begin(), eyes_.end(), [&](const Eye& eye) {
        const float away = glm::length(from - Vec3(eye.centre));
        return away - distance > static_cast<float>(kApexAhead) || away + distance < static_cast<float>(kEyeballRadius);
    });
}

}  // namespace understudy
