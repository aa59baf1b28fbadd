#include "stage/mesh_tree.h"

#include <algorithm>
#include <array>
#include <cassert>

#include <embree3/rtcore.h>
#include <glm/common.hpp>

namespace understudy {

struct MeshTree::Inside {
    // What a hit needs, side by side: two cache lines that can be asked for as soon as the triangle is known.
    struct alignas(16) Triangle {
        std::array<Vec3, 3> corners;
        std::array<Vec3, 3> normals;
        Zone zone;
    };
    std::vector<Triangle> triangles;
    RTCDevice device = nullptr;
    RTCScene scene = nullptr;

    ~Inside() {
        rtcReleaseScene(scene);
        rtcReleaseDevice(device);
    }
};

namespace {

RTCRay embree_ray(const Ray& ray) {
    RTCRay result{};
    result.org_x = ray.origin.x;
    result.org_y = ray.origin.y;
    result.org_z = ray.origin.z;
    result.tnear = ray.near;
    result.dir_x = ray.direction.x;
    result.dir_y = ray.direction.y;
    result.dir_z = ray.direction.z;
    result.tfar = ray.far;
    result.mask = ~0U;
    return result;
}

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

}  // namespace

MeshTree::MeshTree(const SitterMesh& mesh) : inside_(std::make_unique<Inside>()) {
    for (std::size_t i = 0; i < mesh.positions.size(); ++i) {
        constexpr float kHair = 1e-4F;
        low_ = glm::min(low_, mesh.positions[i] - kHair);
        high_ = glm::max(high_, mesh.positions[i] + kHair);
    }
    for (std::size_t i = 0; i < mesh.triangles.size(); ++i) {
        const auto& [a, b, c] = mesh.triangles[i];
        inside_->triangles.push_back({{mesh.positions[a], mesh.positions[b], mesh.positions[c]},
                                      {mesh.normals[a], mesh.normals[b], mesh.normals[c]},
                                      mesh.zones[i]});
    }
    inside_->device = rtcNewDevice(nullptr);
    inside_->scene = rtcNewScene(inside_->device);
    RTCGeometry geometry = rtcNewGeometry(inside_->device, RTC_GEOMETRY_TYPE_TRIANGLE);
    auto* positions = static_cast<float*>(rtcSetNewGeometryBuffer(
        geometry, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT3, 3 * sizeof(float), mesh.positions.size()));
    for (std::size_t i = 0; i < mesh.positions.size(); ++i) {
        for (glm::length_t axis = 0; axis < 3; ++axis)
            positions[3 * i + static_cast<std::size_t>(axis)] = mesh.positions[i][axis];
    }
    auto* corners = static_cast<std::uint32_t*>(rtcSetNewGeometryBuffer(
        geometry, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT3, 3 * sizeof(std::uint32_t), mesh.triangles.size()));
    for (std::size_t i = 0; i < mesh.triangles.size(); ++i) std::copy_n(mesh.triangles[i].data(), 3, corners + 3 * i);
    rtcCommitGeometry(geometry);
    rtcAttachGeometry(inside_->scene, geometry);
    rtcReleaseGeometry(geometry);
    rtcCommitScene(inside_->scene);
    assert(rtcGetDeviceError(inside_->device) == RTC_ERROR_NONE);
}

MeshTree::~MeshTree() = default;
MeshTree::MeshTree(MeshTree&&) noexcept = default;
MeshTree& MeshTree::operator=(MeshTree&&) noexcept = default;

namespace {

RTCRayHit first_meeting(RTCScene scene, const Ray& ray) {
    RTCRayHit query{};
    query.ray = embree_ray(ray);
    query.hit.geomID = RTC_INVALID_GEOMETRY_ID;
    RTCIntersectContext context;
    rtcInitIntersectContext(&context);
    rtcIntersect1(scene, &context, &query);
    return query;
}

}  // namespace

float MeshTree::distance(const Ray& ray) const {
    const RTCRayHit query = first_meeting(inside_->scene, ray);
    return query.hit.geomID == RTC_INVALID_GEOMETRY_ID ? kInfinity : query.ray.tfar;
}

MeshMeeting MeshTree::meet(const Ray& ray) const {
    const RTCRayHit query = first_meeting(inside_->scene, ray);
    if (query.hit.geomID == RTC_INVALID_GEOMETRY_ID) return {};
    const Inside::Triangle& triangle = inside_->triangles[query.hit.primID];
    __builtin_prefetch(&triangle.corners.front());
    __builtin_prefetch(&triangle.zone);
    return {
        query.ray.tfar, {query.hit.Ng_x, query.hit.Ng_y, query.hit.Ng_z}, {query.hit.u, query.hit.v}, query.hit.primID};
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

bool MeshTree::blocks(const Ray& ray) const {
    RTCRay query = embree_ray(ray);
    RTCIntersectContext context;
    rtcInitIntersectContext(&context);
    rtcOccluded1(inside_->scene, &context, &query);
    return query.tfar < 0.0F;
}

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
