#include "stage/strand_grid.h"

#include <algorithm>
#include <bit>

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

// Eight by eight: visit(meetings, pieces) for those that are met, until it says that it is done; whether it did.
template <class Visitor>
bool meet_each(const StrandPoint* points, std::span<const std::uint32_t> pieces, const RayView& view, const Ray& ray,
               const Visitor& visit) {
    for (std::size_t first = 0; first < pieces.size(); first += kPiecesAtOnce) {
        const std::uint32_t* asked = &pieces[first];  // after a cell's last piece come those of the next, or none's
        PieceMeetings meetings = meet_pieces(view.seen(points, asked), view.seen(points + 1, asked), ray.near, ray.far);
        const std::size_t count = std::min(kPiecesAtOnce, pieces.size() - first);
        meetings.met &= (1U << count) - 1U;
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
    const RayView view(ray);
    const StrandPoint* points = inside_->points.data();
    const auto take = [&](const PieceMeetings& meetings, const std::uint32_t* asked) {
        for (std::uint32_t bits = meetings.met; bits != 0; bits &= bits - 1U) {
            const auto i = static_cast<std::size_t>(std::countr_zero(bits));
            const float distance = meetings.distance[i];
            if (distance > nearest.distance) continue;
            if (distance == nearest.distance && (!met || asked[i] > nearest.piece)) continue;
            nearest = {distance, asked[i], meetings.along[i]};
            met = true;
        }
        return false;
    };
    inside_->cells.along(ray, [&](std::span<const std::uint32_t> pieces, float leaves) {
        meet_each(points, pieces, view, ray, take);
        return met && nearest.distance <= leaves;
    });
    return met ? nearest : StrandMeeting{};
}

bool StrandGrid::blocks(const Ray& ray) const {
    bool blocked = false;
    const RayView view(ray);
    const StrandPoint* points = inside_->points.data();
    inside_->cells.along(ray, [&](std::span<const std::uint32_t> pieces, float) {
        blocked = meet_each(points, pieces, view, ray, [](const PieceMeetings&, const std::uint32_t*) { return true; });
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
