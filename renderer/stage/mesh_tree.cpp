#include "stage/mesh_tree.h"

#include <algorithm>
#include <array>
#include <utility>

namespace understudy {

struct MeshTree::Inside {
    // What a hit needs, side by side: two cache lines that can be asked for as soon as the triangle is known.
    struct alignas(16) Triangle {
        std::array<Vec3, 3> corners;
        std::array<Vec3, 3> normals;
        Zone zone;
    };
    std::vector<Triangle> triangles;
    TriangleScene scene;

    Inside(const SitterMesh& mesh, TriangleScene::Will will) : scene(mesh.positions, mesh.triangles, will) {}

    void take(const SitterMesh& mesh) {
        triangles.clear();
        triangles.reserve(mesh.triangles.size());
        for (std::size_t i = 0; i < mesh.triangles.size(); ++i) {
            const auto& [a, b, c] = mesh.triangles[i];
            triangles.push_back({{mesh.positions[a], mesh.positions[b], mesh.positions[c]},
                                 {mesh.normals[a], mesh.normals[b], mesh.normals[c]},
                                 mesh.zones[i]});
        }
    }
};

namespace {

// The point moved off the flat triangle onto the curved surface that its normals pretend, so that shadows do not betray
// the facets: Hanika, "Hacking the Shadow Terminator", Ray Tracing Gems II, 2021.
Vec3 lifted_origin(const Vec3& point, const std::array<Vec3, 3>& corners, const std::array<Vec3, 3>& normals,
                   const Vec3& share) {
    Vec3 lift(0.0F);
    for (std::size_t i = 0; i < 3; ++i) {
        const float below = std::min(0.0F, glm::dot(point - corners[i], normals[i]));
        lift -= share[static_cast<glm::length_t>(i)] * below * normals[i];
    }
    return point + lift;
}

WideBox box_round(const SitterMesh& mesh) {
    constexpr float kClear = 1e-4F;
    WideBox box;
    for (const Vec3& place : mesh.positions) box.take(place, kClear);
    return box;
}

}  // namespace

MeshTree::MeshTree(const SitterMesh& mesh, TriangleScene::Will will)
    : inside_(std::make_unique<Inside>(mesh, will)), box_(box_round(mesh)) {
    inside_->take(mesh);
}

void MeshTree::move(const SitterMesh& mesh) {
    inside_->scene.move(mesh.positions);
    inside_->take(mesh);
    box_ = box_round(mesh);
}

bool MeshTree::is_of(const SitterMesh& mesh) const { return inside_->triangles.size() == mesh.triangles.size(); }

MeshTree::~MeshTree() = default;
MeshTree::MeshTree(MeshTree&&) noexcept = default;
MeshTree& MeshTree::operator=(MeshTree&&) noexcept = default;

float MeshTree::distance(const Ray& ray) const { return inside_->scene.distance(ray); }

MeshMeeting MeshTree::meet(const Ray& ray) const {
    const MeshMeeting meeting = inside_->scene.meet(ray);
    if (meeting.distance == kInfinity) return meeting;
    const Inside::Triangle& triangle = inside_->triangles[meeting.triangle];
    __builtin_prefetch(&triangle.corners.front());
    __builtin_prefetch(&triangle.zone);
    return meeting;
}

MeshHit MeshTree::hit_at(const MeshMeeting& meeting) const {
    const Inside::Triangle& triangle = inside_->triangles[meeting.triangle];
    const Vec3 share(1.0F - meeting.share.x - meeting.share.y, meeting.share.x, meeting.share.y);
    const auto& corners = triangle.corners;
    const auto& normals = triangle.normals;
    MeshHit hit;
    hit.distance = meeting.distance;
    hit.geometric = glm::normalize(meeting.geometric);
    hit.position = share.x * corners[0] + share.y * corners[1] + share.z * corners[2];
    hit.shading = glm::normalize(share.x * normals[0] + share.y * normals[1] + share.z * normals[2]);
    hit.lifted = lifted_origin(hit.position, corners, normals, share);
    hit.triangle = meeting.triangle;
    hit.zone = triangle.zone;
    return hit;
}

std::optional<MeshHit> MeshTree::intersect(const Ray& ray) const {
    const MeshMeeting meeting = meet(ray);
    if (meeting.distance == kInfinity) return std::nullopt;
    return hit_at(meeting);
}

bool MeshTree::blocks(const Ray& ray) const { return inside_->scene.blocks(ray); }

bool MeshTree::encloses(const Vec3& point) const {
    // The mesh is open below the chest, so a majority decides.
    constexpr std::array<Vec3, 5> kWays{Vec3(0, 1, 0), Vec3(0.96F, 0.28F, 0), Vec3(-0.96F, 0.28F, 0),
                                        Vec3(0, 0.28F, 0.96F), Vec3(0, 0.28F, -0.96F)};
    int from_inside = 0;
    for (const Vec3& way : kWays) {
        const auto hit = intersect({point, way});
        if (hit && glm::dot(hit->geometric, way) > 0.0F) ++from_inside;
    }
    return from_inside >= 3;
}

Zone MeshTree::zone_of(std::uint32_t triangle) const { return inside_->triangles[triangle].zone; }

}  // namespace understudy
