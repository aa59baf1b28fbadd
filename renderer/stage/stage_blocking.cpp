// What stands in a ray's way, and how much of its light gets past.
#include "stage/stage.h"

namespace understudy {

namespace {

// The lining behind a lid is the socket's; whoever asks what hides a light means the lid.
Zone zone_in_words(Zone zone, const Vec3& place, const std::vector<Eye>& eyes) {
    constexpr double kSocketReach = 0.025;  // from an eye's centre
    if (zone != Zone::kSocket) return zone;
    for (const Eye& eye : eyes) {
        const Double3 away = Double3(place) - eye.centre;
        if (glm::length(away) < kSocketReach) return glm::dot(away, eye.up) > 0.0 ? Zone::kUpperLid : Zone::kLowerLid;
    }
    return zone;
}

}  // namespace

bool Stage::ball_blocks(const Ray& ray) const {
    Meeting met;
    meet_ball(ray, met);
    return met.distance < kInfinity;
}

LaneBits Stage::blocked(const WideRays& rays, LaneBits lanes) const {
    if (log_ != nullptr) for_each_lane(lanes, [&](std::size_t lane) { log_->shadow.push_back(rays[lane]); });
    LaneBits dark = 0;
    const auto each = [&](const WideTruth& may_meet, const auto& blocks) {
        for_each_lane(lanes_of(may_meet) & lanes & ~dark, [&](std::size_t lane) {
            if (blocks(rays[lane])) dark |= 1U << lane;
        });
    };
    const auto shape = [&](const auto& thing) {
        each(thing.may_meet(rays), [&](const Ray& ray) { return thing.blocks(ray); });
    };
    for (const Emitter& emitter : emitters_) shape(emitter);
    for (std::size_t i = 0; i < panels_.size(); ++i) {
        if (!(panel_open_shares_[i] > 0.0F)) shape(panels_[i]);
    }
    for (const Board& board : backdrop_) shape(board);
    if (sweep_) shape(*sweep_);
    for (const Board& wall : walls_) shape(wall);
    for (const Eye& eye : eyes_) {
        each(may_meet_eye(eye, rays), [&](const Ray& ray) { return intersect_eye(eye, ray).has_value(); });
    }
    if (ball_radius_ > 0.0F) {
        each(may_meet_ball(rays, ball_centre_, ball_radius_), [&](const Ray& ray) { return ball_blocks(ray); });
    }
    if (mesh_) each(mesh_->may_meet(rays), [&](const Ray& ray) { return mesh_->blocks(ray); });
    if (strands_) each(strands_->may_meet(rays), [&](const Ray& ray) { return strands_->blocks(ray); });
    return dark;
}

bool Stage::blocks(const Ray& ray) const {
    WideRays rays;
    rays.set(0, ray);
    return blocked(rays, first_lanes(1)) != 0;
}

float Stage::passes(const Ray& ray) const {
    WideRays rays;
    rays.set(0, ray);
    return passed(rays, first_lanes(1))[0];
}

Wide Stage::passed(const WideRays& rays, LaneBits lanes) const {
    Wide share{};
    for_each_lane(lanes & ~blocked(rays, lanes), [&](std::size_t lane) { share[lane] = 1.0F; });
    for (const Lens& lens : lenses_) {
        for_each_lane(lanes_of(lens.may_meet(rays)) & lanes, [&](std::size_t lane) {
            if (share[lane] > 0.0F) share[lane] *= lens.passes(rays[lane]);
        });
    }
    if (!any_open_) return share;
    for (std::size_t i = 0; i < panels_.size(); ++i) {
        if (!(panel_open_shares_[i] > 0.0F)) continue;
        for_each_lane(lanes_of(panels_[i].may_meet(rays)) & lanes, [&](std::size_t lane) {
            if (panels_[i].blocks(rays[lane])) share[lane] *= panel_open_shares_[i];
        });
    }
    return share;
}

std::optional<std::string> Stage::blocker(const Ray& ray) const {
    const auto hit = intersect(ray);
    if (!hit) return std::nullopt;
    switch (hit->thing) {
        case Thing::kSitter:
            return std::string(zone_name(zone_in_words(mesh_->zone_of(hit->index), hit->position, eyes_)));
        case Thing::kBall:
            return "ball";
        case Thing::kEyeWhite:
        case Thing::kCornea:
            return "eye";
        case Thing::kPanel:
            return panel_names_[hit->index];
        case Thing::kBackdrop:
            return "backdrop";
        case Thing::kWall:
            return "wall";
        case Thing::kLens:
            return "lens";
        case Thing::kEmitter:
            return names_[hit->index];
        case Thing::kStrand:
            return std::string(strand_name(hit->strand.kind));
    }
    return std::nullopt;
}

}  // namespace understudy
