#include "stage/strand_grid.h"

#include <algorithm>

#include "stage/piece_batch.h"
#include "stage/strand_cells.h"

namespace understudy {

struct StrandGrid::Inside {
    std::vector<StrandPoint> points;
    std::vector<Strand> strands;    // in order of their points
    std::vector<HairFibre> fibres;  // one a shade
    StrandCells cells;
};

namespace {

// Sixteen by sixteen: visit(meetings, pieces) for those that are met, until it says that it is done; whether it did.
template <class Visitor>
bool meet_each(const StrandPoint* points, std::span<const std::uint32_t> pieces, const Ray& ray, const Frame& axes,
               const Visitor& visit) {
    for (std::size_t first = 0; first < pieces.size(); first += kLanes) {
        const std::size_t count = std::min(kLanes, pieces.size() - first);
        std::array<std::uint32_t, kLanes> asked;
        for (std::size_t i = 0; i < kLanes; ++i) asked[i] = pieces[first + (i < count ? i : 0)];
        PieceMeetings meetings =
            meet_pieces(WidePoints::of(points, asked), WidePoints::of(points + 1, asked), ray, axes);
        meetings.met &= first_lanes(count);
        if (meetings.met != 0 && visit(meetings, asked)) return true;
    }
    return false;
}

}  // namespace

StrandGrid::StrandGrid(const Strands& strands)
    : inside_(new Inside{strands.points, strands.strands, {}, StrandCells(strands)}) {
    for (const HairPigment& shade : strands.shades) inside_->fibres.push_back({hair_absorption(shade)});
    for (const StrandPoint& point : inside_->points) box_.take(point.place, 2.0F * point.radius);
}

StrandGrid::~StrandGrid() = default;
StrandGrid::StrandGrid(StrandGrid&&) noexcept = default;
StrandGrid& StrandGrid::operator=(StrandGrid&&) noexcept = default;

// Of two pieces that are met at the same place, where they join, the first counts, in whatever cell it comes.
StrandMeeting StrandGrid::meet(const Ray& ray) const {
    StrandMeeting nearest;
    nearest.distance = ray.far;
    bool met = false;
    const Frame axes = Frame::around(ray.direction);
    inside_->cells.along(ray, [&](std::span<const std::uint32_t> pieces, float leaves) {
        meet_each(inside_->points.data(), pieces, ray, axes, [&](const PieceMeetings& meetings, const auto& asked) {
            for_each_lane(meetings.met, [&](std::size_t lane) {
                const StrandMeeting here{meetings.distance[lane], asked[lane], meetings.along[lane]};
                const bool first = here.distance < nearest.distance ||
                                   (met && here.distance == nearest.distance && here.piece < nearest.piece);
                if (!first) return;
                nearest = here;
                met = true;
            });
            return false;
        });
        return met && nearest.distance <= leaves;
    });
    return met ? nearest : StrandMeeting{};
}

bool StrandGrid::blocks(const Ray& ray) const {
    bool blocked = false;
    const Frame axes = Frame::around(ray.direction);
    inside_->cells.along(ray, [&](std::span<const std::uint32_t> pieces, float) {
        blocked = meet_each(inside_->points.data(), pieces, ray, axes, [](const auto&, const auto&) { return true; });
        return blocked;
    });
    return blocked;
}

StrandPlace StrandGrid::place_of(const StrandMeeting& meeting, const Ray& ray) const {
    const StrandPoint& from = inside_->points[meeting.piece];
    const StrandPoint& to = inside_->points[meeting.piece + 1];
    const auto after = std::upper_bound(inside_->strands.begin(), inside_->strands.end(), meeting.piece,
                                        [](std::uint32_t piece, const Strand& strand) { return piece < strand.first; });
    const Strand& strand = *(after - 1);
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
