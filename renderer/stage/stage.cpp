#include "stage/stage.h"

#include <algorithm>

#include <fmt/format.h>

#include "stage/room_fit.h"

namespace understudy {

namespace {

// Rays that leave a surface start this far off it: above the rounding of a coordinate of a few metres, far below a
// pore.
constexpr float kLeaveOff = 1e-5F;

// A normal turned to the side that the ray came from.
Vec3 toward(const Vec3& normal, const Vec3& ray_direction) {
    return glm::dot(normal, ray_direction) > 0.0F ? -normal : normal;
}

// A smooth normal may look away from a ray that the flat triangle faces: it is bent just far enough to face it.
Vec3 facing_normal(const Vec3& shading, const Vec3& ray_direction) {
    constexpr float kGrazing = 0.01F;
    const float slope = -glm::dot(shading, ray_direction);
    if (slope >= kGrazing) return shading;
    return glm::normalize(shading - (kGrazing - slope) * ray_direction);
}

}  // namespace

void Stage::meet_emitter(std::size_t index, const Ray& ray, Meeting& nearest) const {
    const auto met = emitters_[index].intersect(ray);
    if (!met || met->distance >= nearest.distance) return;
    nearest = {met->distance, Thing::kEmitter, met->luminous, static_cast<std::uint32_t>(index), met->normal};
}

void Stage::meet_board(const std::optional<BoardHit>& met, Thing thing, std::size_t index, const Surface* surface,
                       Meeting& nearest) {
    if (!met || met->distance >= nearest.distance) return;
    nearest = {met->distance, thing, false, static_cast<std::uint32_t>(index), met->normal, surface};
}

void Stage::meet_eye(std::size_t index, const Ray& ray, Meeting& nearest) const {
    const auto met = intersect_eye(eyes_[index], ray);
    if (!met || met->distance >= nearest.distance) return;
    nearest = {met->distance, met->cornea ? Thing::kCornea : Thing::kEyeWhite,
               false,         static_cast<std::uint32_t>(index),
               met->normal,   met->cornea ? nullptr : &eye_white_};
}

void Stage::meet_ball(const Ray& ray, Meeting& nearest) const {
    const Vec3 away = ball_centre_ - ray.origin;
    const float along = glm::dot(away, ray.direction);
    const Vec3 aside = away - along * ray.direction;
    const float inside = ball_radius_ * ball_radius_ - glm::dot(aside, aside);
    if (inside < 0.0F) return;
    const float distance = along - std::sqrt(inside);
    if (distance <= ray.near || distance >= ray.far || distance >= nearest.distance) return;
    nearest = {distance, Thing::kBall, false, 0, (ray.at(distance) - ball_centre_) / ball_radius_, &ball_surface_};
}

void Stage::meet_mesh(const Ray& ray, Meeting& nearest) const {
    const MeshMeeting met = mesh_->meet(ray);
    if (met.distance == kInfinity) return;
    nearest = {met.distance, Thing::kSitter, false, met.triangle, met.geometric, nullptr, met.share};
}

void Stage::meet_strand(const Ray& ray, RayMemory* memory, Meeting& nearest) const {
    const auto ask = [&] { return strands_->meet(ray); };
    const StrandMeeting met = memory != nullptr ? memory->strand(ray, ask) : ask();
    if (met.distance == kInfinity) return;
    nearest = {met.distance, Thing::kStrand, false, met.piece, Vec3(0.0F), nullptr, {met.along, 0.0F}};
}

std::array<Meeting, kLanes> Stage::meet(const WideRays& rays, LaneBits lanes, RayMemory* memory) const {
    auto nearest = meet_but_lenses(rays, lanes, memory);
    for (std::size_t i = 0; i < lenses_.size(); ++i) {
        for_each_lane(lanes_of(lenses_[i].may_meet(rays)) & lanes, [&](std::size_t lane) {
            const auto met = lenses_[i].intersect(rays[lane]);
            if (!met || met->distance >= nearest[lane].distance) return;
            nearest[lane] = {met->distance, Thing::kLens, false, static_cast<std::uint32_t>(i), met->normal};
        });
    }
    return nearest;
}

std::array<Meeting, kLanes> Stage::meet_but_lenses(const WideRays& rays, LaneBits lanes, RayMemory* memory) const {
    std::array<Meeting, kLanes> nearest{};
    const auto each = [&](const WideTruth& may_meet, const auto& visit) {
        for_each_lane(lanes_of(may_meet) & lanes, [&](std::size_t lane) { visit(rays[lane], nearest[lane]); });
    };
    for (std::size_t i = 0; i < emitters_.size(); ++i) {
        each(emitters_[i].may_meet(rays), [&](const Ray& ray, Meeting& first) { meet_emitter(i, ray, first); });
    }
    const auto boards = [&](const auto& shape, Thing thing, std::size_t index, const Surface* surface) {
        each(shape.may_meet(rays),
             [&](const Ray& ray, Meeting& first) { meet_board(shape.intersect(ray), thing, index, surface, first); });
    };
    for (std::size_t i = 0; i < panels_.size(); ++i) boards(panels_[i], Thing::kPanel, i, &panel_surfaces_[i]);
    const Surface* sheet = backdrop_surface_ ? &*backdrop_surface_ : nullptr;
    for (const Board& board : backdrop_) boards(board, Thing::kBackdrop, 0, sheet);
    if (sweep_) boards(*sweep_, Thing::kBackdrop, 0, sheet);
    for (std::size_t i = 0; i < walls_.size(); ++i) boards(walls_[i], Thing::kWall, i, &wall_surfaces_[i]);
    for (std::size_t i = 0; i < eyes_.size(); ++i) {
        each(may_meet_eye(eyes_[i], rays), [&](const Ray& ray, Meeting& first) { meet_eye(i, ray, first); });
    }
    if (ball_radius_ > 0.0F) {
        each(may_meet_ball(rays, ball_centre_, ball_radius_),
             [&](const Ray& ray, Meeting& first) { meet_ball(ray, first); });
    }
    if (log_ != nullptr) for_each_lane(lanes, [&](std::size_t lane) { log_->nearest.push_back(rays[lane]); });
    // The mesh first, then strands no farther than what was met: they are the slowest to ask.
    const auto with_tree = [&](const auto& tree, const auto& visit) {
        WideRays shortened = rays;
        for_each_lane(lanes, [&](std::size_t lane) {
            shortened.far[lane] = std::min(shortened.far[lane], nearest[lane].distance);
        });
        for_each_lane(lanes_of(tree.may_meet(shortened)) & lanes,
                      [&](std::size_t lane) { visit(shortened[lane], nearest[lane]); });
    };
    if (mesh_) with_tree(*mesh_, [&](const Ray& ray, Meeting& first) { meet_mesh(ray, first); });
    if (strands_) with_tree(*strands_, [&](const Ray& ray, Meeting& first) { meet_strand(ray, memory, first); });
    return nearest;
}

Hit Stage::analytic_hit(const Ray& ray, const Meeting& nearest) const {
    Hit hit;
    hit.thing = nearest.thing;
    hit.index = nearest.index;
    hit.luminous = nearest.luminous;
    hit.distance = nearest.distance;
    hit.position = ray.at(nearest.distance);
    hit.geometric = toward(nearest.normal, ray.direction);
    hit.shading = hit.geometric;
    hit.leave_from = hit.position + kLeaveOff * hit.geometric;
    const bool painted = paint_ && nearest.thing == Thing::kBackdrop;
    hit.surface = painted ? &paint_->surface_at(hit.position) : nearest.surface;
    return hit;
}

Hit Stage::sitter_hit(const Ray& ray, const Meeting& nearest) const {
    const MeshHit met = mesh_->hit_at({nearest.distance, nearest.normal, nearest.share, nearest.index});
    Hit hit;
    hit.thing = Thing::kSitter;
    hit.index = met.triangle;
    hit.distance = met.distance;
    hit.position = met.position;
    const bool from_inside = glm::dot(met.geometric, ray.direction) > 0.0F;
    hit.geometric = from_inside ? -met.geometric : met.geometric;
    hit.shading = facing_normal(from_inside ? -met.shading : met.shading, ray.direction);
    hit.leave_from = (from_inside ? met.position : met.lifted) + kLeaveOff * hit.geometric;
    hit.surface = &zone_surfaces_[static_cast<std::size_t>(met.zone)];
    hit.share = nearest.share;
    if (is_skin(*hit.surface)) hit.spot = cover_->spot_at(met.triangle, nearest.share);
    return hit;
}

Hit Stage::emerged(const Flesh::Wall& wall) const {
    Hit hit;
    if (wall.on_eye) {
        hit.position = wall.on_eye->origin;
        hit.geometric = wall.on_eye->direction;
        hit.shading = hit.geometric;
        hit.leave_from = hit.position + kLeaveOff * hit.geometric;
    } else {
        const MeshMeeting& met = wall.meeting;
        const Ray back{{}, -glm::normalize(met.geometric)};
        hit = sitter_hit(back, {met.distance, Thing::kSitter, false, met.triangle, met.geometric, nullptr, met.share});
    }
    hit.distance = wall.distance;
    // The eye and its corner are as wet on that side as skin.
    hit.surface = &zone_surfaces_[static_cast<std::size_t>(Zone::kFace)];
    return hit;
}

Hit Stage::relieved(Hit hit, const Ray& ray) const {
    if (!is_skin(*hit.surface)) {
        hit.shading = facing_normal(cloth_->bent(hit.shading, hit.index, hit.share), ray.direction);
        return hit;
    }
    const SkinCover::Relieved fine = cover_->relieved(hit.shading, hit.spot, hit.index, hit.share);
    hit.shading = facing_normal(fine.normal, ray.direction);
    hit.spot = fine.spot;
    return hit;
}

Hit Stage::strand_hit(const Ray& ray, const Meeting& nearest) const {
    Hit hit;
    hit.thing = Thing::kStrand;
    hit.index = nearest.index;
    hit.distance = nearest.distance;
    hit.strand = strands_->place_of({nearest.distance, nearest.index, nearest.share.x}, ray);
    hit.position = hit.strand.axis;
    hit.geometric = hit.strand.outward(-ray.direction);
    hit.shading = hit.geometric;
    hit.leave_from = hit.strand.leave(-ray.direction);
    return hit;
}

Hit Stage::hit_at(const Ray& ray, const Meeting& meeting) const {
    if (meeting.thing == Thing::kStrand) return strand_hit(ray, meeting);
    return meeting.thing == Thing::kSitter ? sitter_hit(ray, meeting) : analytic_hit(ray, meeting);
}

std::optional<Hit> Stage::intersect(const Ray& ray) const {
    WideRays rays;
    rays.set(0, ray);
    const Meeting meeting = meet_but_lenses(rays, first_lanes(1))[0];
    if (meeting.distance == kInfinity) return std::nullopt;
    return hit_at(ray, meeting);
}

bool Stage::encloses(const Vec3& point) const {
    if (ball_radius_ > 0.0F && glm::length(point - ball_centre_) < ball_radius_) return true;
    return mesh_ && mesh_->encloses(point);
}

Problems Stage::problems_with(const Studio& studio) const {
    Problems problems = outside_room(studio, emitters_, panels_);
    for (std::size_t i = 0; i < emitters_.size(); ++i) {
        bool inside = false;
        for (int k = 0; k < 9; ++k) {
            const int row = k / 3;
            const Vec2 square(0.5F * static_cast<float>(k % 3), 0.5F * static_cast<float>(row));
            inside = inside || encloses(emitters_[i].point_at(square, Vec3(studio.points.camera)).position);
        }
        if (!inside && !encloses(emitters_[i].centre())) continue;
        problems.push_back(
            {Blame::kWrongInput, fmt::format("{}: the light \"{}\" stands inside the sitter; expected its front to be "
                                             "clear of head and shoulders",
                                             place_text(studio.setup.lights[i].said_at), names_[i])});
    }
    if (encloses(Vec3(studio.camera.centre))) {
        problems.push_back({Blame::kWrongInput,
                            fmt::format("{}: the camera stands inside the sitter; expected a distance that is clear of "
                                        "the head",
                                        studio.setup.file.string())});
    }
    return problems;
}

}  // namespace understudy
