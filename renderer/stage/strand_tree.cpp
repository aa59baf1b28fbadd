#include "stage/strand_tree.h"

#include <algorithm>
#include <cassert>

#include "stage/embree_ray.h"

namespace understudy {

struct StrandTree::Inside {
    std::vector<StrandPoint> points;       // Embree reads them where they are
    std::vector<std::uint32_t> firsts;     // of each piece, its first point
    std::vector<Strand> strands;           // in order of their points
    std::vector<std::uint32_t> strand_of;  // of each piece
    std::vector<HairFibre> fibres;         // one a shade
    RTCDevice device = nullptr;
    RTCScene scene = nullptr;

    ~Inside() {
        rtcReleaseScene(scene);
        rtcReleaseDevice(device);
    }
};

StrandTree::StrandTree(const Strands& strands) : inside_(std::make_unique<Inside>()) {
    static_assert(sizeof(StrandPoint) == 4 * sizeof(float));
    inside_->points = strands.points;
    inside_->strands = strands.strands;
    for (const HairPigment& shade : strands.shades) inside_->fibres.push_back({hair_absorption(shade)});
    for (std::uint32_t s = 0; s < strands.strands.size(); ++s) {
        const Strand& strand = strands.strands[s];
        for (std::uint32_t k = 0; k + 1 < strand.count; ++k) {
            inside_->firsts.push_back(strand.first + k);
            inside_->strand_of.push_back(s);
        }
    }
    for (const StrandPoint& point : inside_->points) box_.take(point.place, 2.0F * point.radius);

    inside_->device = rtcNewDevice(nullptr);
    inside_->scene = rtcNewScene(inside_->device);
    RTCGeometry geometry = rtcNewGeometry(inside_->device, RTC_GEOMETRY_TYPE_FLAT_LINEAR_CURVE);
    rtcSetSharedGeometryBuffer(geometry, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT4, inside_->points.data(), 0,
                               sizeof(StrandPoint), inside_->points.size());
    rtcSetSharedGeometryBuffer(geometry, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT, inside_->firsts.data(), 0,
                               sizeof(std::uint32_t), inside_->firsts.size());
    rtcCommitGeometry(geometry);
    rtcAttachGeometry(inside_->scene, geometry);
    rtcReleaseGeometry(geometry);
    rtcCommitScene(inside_->scene);
    assert(rtcGetDeviceError(inside_->device) == RTC_ERROR_NONE);
}

StrandTree::~StrandTree() = default;
StrandTree::StrandTree(StrandTree&&) noexcept = default;
StrandTree& StrandTree::operator=(StrandTree&&) noexcept = default;

StrandMeeting StrandTree::meet(const Ray& ray) const {
    RTCRayHit query{};
    query.ray = embree_ray(ray);
    query.hit.geomID = RTC_INVALID_GEOMETRY_ID;
    RTCIntersectContext context;
    rtcInitIntersectContext(&context);
    rtcIntersect1(inside_->scene, &context, &query);
    if (query.hit.geomID == RTC_INVALID_GEOMETRY_ID) return {};
    return {query.ray.tfar, query.hit.primID, query.hit.u};
}

bool StrandTree::blocks(const Ray& ray) const {
    RTCRay query = embree_ray(ray);
    RTCIntersectContext context;
    rtcInitIntersectContext(&context);
    rtcOccluded1(inside_->scene, &context, &query);
    return query.tfar < 0.0F;
}

StrandPlace StrandTree::place_of(const StrandMeeting& meeting, const Ray& ray) const {
    const std::uint32_t first = inside_->firsts[meeting.piece];
    const StrandPoint& from = inside_->points[first];
    const StrandPoint& to = inside_->points[first + 1];
    const Strand& strand = inside_->strands[inside_->strand_of[meeting.piece]];
    StrandPlace place;
    place.fibre = &inside_->fibres[strand.shade];
    place.kind = strand.kind;
    place.axis = glm::mix(from.place, to.place, meeting.along);
    place.radius = std::max(glm::mix(from.radius, to.radius, meeting.along), 1e-7F);
    place.tangent = glm::normalize(to.place - from.place);
    // How far the ray passes beside the axis.
    const Vec3 beside = glm::cross(-ray.direction, place.tangent);
    const float length = glm::length(beside);
    if (length > 1e-6F) {
        const float off = glm::dot(ray.at(meeting.distance) - place.axis, beside) / length;
        place.across = std::clamp(off / place.radius, -0.999F, 0.999F);
    }
    return place;
}

Vec3 StrandPlace::outward(const Vec3& direction) const {
    const Vec3 square = direction - glm::dot(direction, tangent) * tangent;
    const float length = glm::length(square);
    return length > 1e-6F ? square / length : Frame::around(tangent).tangent;
}

}  // namespace understudy
