// Points of a front and their density, for sixteen receivers at a time.
#include <algorithm>

#include "kit/density_grid.h"
#include "kit/emitter.h"
#include "kit/square_maps.h"

namespace understudy {

namespace {

// A part of the largest weight that every grid point keeps, so that no lit place has density 0 near the horizon.
constexpr float kLeastShare = 0.02F;

// No number comes of a grid point that the receiver lies on: it then counts as much as the strongest.
Wide number_or_mark(const Wide& weight) { return weight < kInfinity ? weight : everywhere(-1.0F); }

SquareDensityOf<Wide> floored(const std::array<Wide, kGridPoints>& marked) {
    Wide strongest = marked[0];
    for (const Wide& weight : marked) strongest = larger(strongest, weight);
    const Wide largest = strongest > 0.0F ? strongest : everywhere(1.0F);
    const Wide least = kLeastShare * largest;
    std::array<Wide, kGridPoints> weights = marked;
    for (Wide& weight : weights) weight = weight < 0.0F ? largest : larger(weight, least);
    return SquareDensityOf<Wide>(weights);
}

}  // namespace

// The cone in which a receiver sees a ball; from a place inside the ball, half of all directions.
struct Emitter::WideCone {
    Wide distance;    // receiver to the ball's centre
    Wide depth;       // 1 − cosine of the half angle
    WideFrame frame;  // its normal from the receiver to the centre

    WideCone(const Wide3& receiver, const Vec3& centre, float radius, const Vec3& any_way) {
        const Wide3 toward = centre - receiver;
        const Wide real_distance = square_root(dot(toward, toward));
        distance = larger(real_distance, everywhere(radius));
        const Wide sine2 = smaller(everywhere(1.0F), radius * radius / (distance * distance));
        depth = sine2 / (1.0F + square_root(1.0F - sine2));
        const auto apart = real_distance > 0.0F;
        const Wide inverse = 1.0F / real_distance;
        frame = WideFrame::around({apart ? toward.x * inverse : everywhere(any_way.x),
                                   apart ? toward.y * inverse : everywhere(any_way.y),
                                   apart ? toward.z * inverse : everywhere(any_way.z)});
    }
    Wide solid_angle() const { return 2.0F * kPi * depth; }
};

WideEmitterPoints Emitter::ball_points(const Wide2& square, const WideCone& cone) const {
    // Even in solid angle (Shirley, Wang and Zimmerman, "Monte Carlo Techniques for Direct Lighting Calculations",
    // ACM TOG 15(1), 1996): evenly by area, the many points near the edge would all be seen at grazing angles.
    const float radius = ball_.radius();
    const DiscVector<Wide> disc = square_to_disc_vector(square.x, square.y);
    const Wide sunk = cone.depth * disc.radius * disc.radius;
    const Wide cosine = 1.0F - sunk;
    const Wide sine2 = sunk * (2.0F - sunk);
    const Wide half_chord = square_root(larger(Wide{}, radius * radius - cone.distance * cone.distance * sine2));
    // In forms that do not cancel for a small ball far away.
    const Wide distance = cone.distance * cosine - half_chord;
    const Wide toward_receiver = cone.distance * sine2 + half_chord * cosine;
    const Wide aside = distance * square_root(sine2);
    const Wide3 outward = cone.frame.to_world({aside * disc.x, aside * disc.y, -toward_receiver});
    const Wide3 normal = 1.0F / square_root(dot(outward, outward)) * outward;
    constexpr float kLeastCosine = 1e-4F;  // one sample in 10⁸ lies nearer to the edge
    const Wide facing = larger(half_chord * (1.0F / radius), everywhere(kLeastCosine));
    return {centre_ + everywhere(radius) * normal, normal, cone.solid_angle() * distance * distance / facing};
}

WideEmitterPoints Emitter::canopy_points(const Wide2& square, const Wide3& receiver) const {
    // Along the axis from the canopy's middle: equal depths, equal areas.
    const DiscVector<Wide> disc = square_to_disc_vector(square.x, square.y);
    const float radius = canopy_.sphere_radius();
    const Wide sunk = canopy_.depth() * disc.radius * disc.radius;
    const Wide across = square_root(larger(Wide{}, sunk * (2.0F * radius - sunk)));
    const Wide3 outward = (radius - sunk) * canopy_.pole() + across * disc.x * right_ + across * disc.y * up_;
    const Wide3 position = canopy_.sphere_centre() + outward;
    Wide inward = everywhere(-1.0F / radius);
    if (both_sides_) inward = dot(receiver - position, outward) > 0.0F ? -inward : inward;
    return {position, inward * outward, everywhere(canopy_.area())};
}

WideEmitterPoints Emitter::even_points(const Wide2& square, const Wide3& receiver) const {
    if (kind_ == Kind::kBall) return ball_points(square, WideCone(receiver, centre_, ball_.radius(), axis_));
    if (kind_ == Kind::kCanopy) return canopy_points(square, receiver);
    if (kind_ == Kind::kPoint) {
        const Wide3 toward = receiver - centre_;
        const Wide inverse = 1.0F / square_root(dot(toward, toward));
        return {Wide3(centre_), inverse * toward, everywhere(static_cast<float>(kPointArea))};
    }
    const Wide2 plane = flat_.points_at(square);
    return {centre_ + plane.x * right_ + plane.y * up_, Wide3(axis_), everywhere(flat_.area())};
}

WideEmitterPoints Emitter::points_at(const Wide2& square, const Wide3& receiver) const {
    if (!sampling_) return even_points(square, receiver);
    const auto aims = sampling_->aims_at(to_front(receiver - centre_));
    Wide2 spread;
    Wide stretch{};
    for (std::size_t lane = 0; lane < kLanes; ++lane) {
        const PlaceWarp::Place place = aims[lane]->warp.at({square.x[lane], square.y[lane]});
        spread.x[lane] = place.square.x;
        spread.y[lane] = place.square.y;
        stretch[lane] = place.stretch;
    }
    WideEmitterPoints points = even_points(spread, receiver);
    points.area *= stretch;
    return points;
}

WideTruth Emitter::can_light(const WideReceivers& receivers) const {
    const Wide3 away = centre_ - receivers.position;
    WideTruth lit = WideTruth{} - 1;
    if (receivers.response == Response::kFlat) lit &= dot(away, receivers.normal) > -reach_;
    if (kind_ == Kind::kBall || kind_ == Kind::kPoint || both_sides_) return lit;
    const Wide before = -dot(away, axis_);
    lit &= before > 0.0F;
    if (widest_ == kInfinity) return lit;
    const Wide least = reach_ + widest_ * before;
    return lit & (dot(away, away) - before * before <= least * least);
}

Emitter::GridWeights Emitter::grid_weights(const WideReceivers& receivers) const {
    const Wide3 at = to_front(receivers.position - centre_);
    const Wide3 facing = to_front(receivers.normal);
    std::array<const EmissionSampling::Aim*, kLanes> aims{};
    if (sampling_) aims = sampling_->aims_at(at);
    GridWeights weights;
    for (std::size_t i = 0; i < kGridPoints; ++i) {
        Wide3 place(grid_[i].place);
        Wide3 normal(grid_[i].normal);
        for (std::size_t lane = 0; lane < kLanes && sampling_; ++lane) {
            place.set(lane, aims[lane]->grid[i].place);
            normal.set(lane, aims[lane]->grid[i].normal);
        }
        const Wide3 away = place - at;
        const Wide distance2 = dot(away, away);
        // Both cosines times the distance.
        Wide received = dot(away, facing);
        if (receivers.response == Response::kDome) received = 0.5F * (received + square_root(distance2));
        if (receivers.response == Response::kAround) received = square_root(distance2);
        Wide sent = -dot(away, normal);
        if (both_sides_) sent = size_of(sent);
        weights[i] = number_or_mark(larger(received, Wide{}) * larger(sent, Wide{}) / (distance2 * distance2));
    }
    return weights;
}

Emitter::GridWeights Emitter::ball_weights(const WideReceivers& receivers) const {
    // Its squares are even in solid angle, so only the receiver's own response and the emission are left.
    const WideCone cone(receivers.position, centre_, ball_.radius(), axis_);
    GridWeights weights;
    for (std::size_t i = 0; i < kGridPoints; ++i) {
        const Vec2 square = grid_square(i);
        const Wide3 away =
            ball_points({everywhere(square.x), everywhere(square.y)}, cone).position - receivers.position;
        const Wide cosine = dot(away, receivers.normal) / square_root(dot(away, away));
        const bool flat = receivers.response == Response::kFlat;
        Wide weight = flat ? larger(cosine, Wide{}) : 0.5F * (1.0F + cosine);
        if (receivers.response == Response::kAround) weight = everywhere(1.0F);
        if (!even_) {
            const Vec2 inwards = place_inwards(square);
            const Wide3 point = ball_points({everywhere(inwards.x), everywhere(inwards.y)}, cone).position;
            for (std::size_t lane = 0; lane < kLanes; ++lane) {
                const Vec3 at = point[lane];
                weight[lane] *= radiance(at, glm::normalize(receivers.position[lane] - at));
            }
        }
        weights[i] = number_or_mark(weight);
    }
    return weights;
}

WideSquareDensity Emitter::density_for(const WideReceivers& receivers) const {
    if (kind_ == Kind::kPoint) {
        std::array<Wide, kGridPoints> even;
        even.fill(everywhere(1.0F));
        return {SquareDensityOf<Wide>(even), can_light(receivers)};
    }
    const bool ball = kind_ == Kind::kBall;
    return {floored(ball ? ball_weights(receivers) : grid_weights(receivers)), can_light(receivers)};
}

}  // namespace understudy
