#include "stage/triangle_scene.h"

#include <algorithm>
#include <cassert>

#include "stage/embree_ray.h"

namespace understudy {

struct TriangleScene::Inside {
    RTCDevice device = nullptr;
    RTCScene scene = nullptr;
    RTCGeometry geometry = nullptr;  // owned by the scene
    float* places = nullptr;

    void take(const std::vector<Vec3>& positions) const {
        for (std::size_t i = 0; i < positions.size(); ++i) {
            for (glm::length_t axis = 0; axis < 3; ++axis) {
                places[3 * i + static_cast<std::size_t>(axis)] = positions[i][axis];
            }
        }
    }
    ~Inside() {
        rtcReleaseScene(scene);
        rtcReleaseDevice(device);
    }
};

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

TriangleScene::TriangleScene(const std::vector<Vec3>& positions,
                             const std::vector<std::array<std::uint32_t, 3>>& triangles, Will will)
    : inside_(std::make_unique<Inside>()) {
    inside_->device = rtcNewDevice(nullptr);
    inside_->scene = rtcNewScene(inside_->device);
    if (will == Will::kMove) {
        // Only a scene of low quality keeps a tree of each geometry, and only such a tree is refitted.
        rtcSetSceneFlags(inside_->scene, RTC_SCENE_FLAG_DYNAMIC);
        rtcSetSceneBuildQuality(inside_->scene, RTC_BUILD_QUALITY_LOW);
    }
    RTCGeometry geometry = rtcNewGeometry(inside_->device, RTC_GEOMETRY_TYPE_TRIANGLE);
    if (will == Will::kMove) rtcSetGeometryBuildQuality(geometry, RTC_BUILD_QUALITY_REFIT);
    inside_->geometry = geometry;
    inside_->places = static_cast<float*>(rtcSetNewGeometryBuffer(
        geometry, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT3, 3 * sizeof(float), positions.size()));
    inside_->take(positions);
    auto* corners = static_cast<std::uint32_t*>(rtcSetNewGeometryBuffer(
        geometry, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT3, 3 * sizeof(std::uint32_t), triangles.size()));
    for (std::size_t i = 0; i < triangles.size(); ++i) std::copy_n(triangles[i].data(), 3, corners + 3 * i);
    rtcCommitGeometry(geometry);
    rtcAttachGeometry(inside_->scene, geometry);
    rtcReleaseGeometry(geometry);
    rtcCommitScene(inside_->scene);
    assert(rtcGetDeviceError(inside_->device) == RTC_ERROR_NONE);
}

void TriangleScene::move(const std::vector<Vec3>& positions) {
    inside_->take(positions);
    rtcUpdateGeometryBuffer(inside_->geometry, RTC_BUFFER_TYPE_VERTEX, 0);
    rtcCommitGeometry(inside_->geometry);
    rtcCommitScene(inside_->scene);
    assert(rtcGetDeviceError(inside_->device) == RTC_ERROR_NONE);
}

TriangleScene::~TriangleScene() = default;
TriangleScene::TriangleScene(TriangleScene&&) noexcept = default;
TriangleScene& TriangleScene::operator=(TriangleScene&&) noexcept = default;

float TriangleScene::distance(const Ray& ray) const {
    const RTCRayHit query = first_meeting(inside_->scene, ray);
    return query.hit.geomID == RTC_INVALID_GEOMETRY_ID ? kInfinity : query.ray.tfar;
}

MeshMeeting TriangleScene::meet(const Ray& ray) const {
    const RTCRayHit query = first_meeting(inside_->scene, ray);
    if (query.hit.geomID == RTC_INVALID_GEOMETRY_ID) return {};
    return {
        query.ray.tfar, {query.hit.Ng_x, query.hit.Ng_y, query.hit.Ng_z}, {query.hit.u, query.hit.v}, query.hit.primID};
}

bool TriangleScene::blocks(const Ray& ray) const {
    RTCRay query = embree_ray(ray);
    RTCIntersectContext context;
    rtcInitIntersectContext(&context);
    rtcOccluded1(inside_->scene, &context, &query);
    return query.tfar < 0.0F;
}

}  // namespace understudy
