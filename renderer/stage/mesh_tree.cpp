#include "stage/mesh_tree.h"

#include <algorithm>
#include <array>
#include <cassert>

#include <embree3/rtcore.h>

namespace understudy {

struct MeshTree::Inside {
    // What a hit needs, packed so that it touches few cache lines: a corner is one half of one.
    struct alignas(32) Corner {
        Vec3 position;
        Vec3 normal;
    };
    struct alignas(16) Triangle {
        std::array<std::uint32_t, 3> corners;
        Zone zone;
    };
    std::vector<Corner> corners;
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
        inside_->corners.push_back({mesh.positions[i], mesh.normals[i]});
        constexpr float kHair = 1e-4F;
        low_ = glm::min(low_, mesh.positions[i] - kHair);
        high_ = glm::max(high_, mesh.positions[i] + kHair);
    }
    for (std::size_t i = 0; i < mesh.triangles.size(); ++i) {
        inside_->triangles.push_back({mesh.triangles[i], mesh.zones[i]});
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

std::optional<MeshHit> MeshTree::intersect(const Ray& ray) const {
    const RTCRayHit query = first_meeting(inside_->scene, ray);
    if (query.hit.geomID == RTC_INVALID_GEOMETRY_ID) return std::nullopt;

    const Inside::Triangle& triangle = inside_->triangles[query.hit.primID];
    const Vec3 share(1.0F - query.hit.u - query.hit.v, query.hit.u, query.hit.v);
    std::array<Vec3, 3> corners{};
    std::array<Vec3, 3> normals{};
    for (std::size_t i = 0; i < 3; ++i) {
        const Inside::Corner& corner = inside_->corners[triangle.corners[i]];
        corners[i] = corner.position;
        normals[i] = corner.normal;
    }
    MeshHit hit;
    hit.distance = query.ray.tfar;
    hit.geometric = glm::normalize(Vec3(query.hit.Ng_x, query.hit.Ng_y, query.hit.Ng_z));
    hit.position = share.x * corners[0] + share.y * corners[1] + share.z * corners[2];
    hit.shading = glm::normalize(share.x * normals[0] + share.y * normals[1] + share.z * normals[2]);
    hit.lifted = lifted_origin(hit.position, corners, normals, share);
    hit.triangle = query.hit.primID;
    hit.zone = triangle.zone;
    return hit;
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
