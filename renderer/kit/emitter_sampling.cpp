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

WideEmitterPoints Emitter::sphere_points(const Wide2& square, const WideCone& cone) const {
    // Even in solid angle (Shirley, Wang and Zimmerman, "Monte Carlo Techniques for Direct Lighting Calculations",
    // ACM TOG 15(1), 1996): evenly by area, the many points near the edge would all be seen at grazing angles.
    const DiscVector<Wide> disc = square_to_disc_vector(square.x, square.y);
    const Wide sunk = cone.depth * disc.radius * disc.radius;
    const Wide cosine = 1.0F - sunk;
    const Wide sine2 = sunk * (2.0F - sunk);
    const Wide half_chord = square_root(larger(Wide{}, radius_ * radius_ - cone.distance * cone.distance * sine2));
    // In forms that do not cancel for a small ball far away.
    const Wide distance = cone.distance * cosine - half_chord;
    const Wide toward_receiver = cone.distance * sine2 + half_chord * cosine;
    const Wide aside = distance * square_root(sine2);
    const Wide3 outward = cone.frame.to_world({aside * disc.x, aside * disc.y, -toward_receiver});
    const Wide3 normal = 1.0F / square_root(dot(outward, outward)) * outward;
    constexpr float kLeastCosine = 1e-4F;  // one sample in 10⁸ lies nearer to the edge
    const Wide facing = larger(half_chord * (1.0F / radius_), everywhere(kLeastCosine));
    return {centre_ + everywhere(radius_) * normal, normal, cone.solid_angle() * distance * distance / facing};
}

WideEmitterPoints Emitter::dome_points(const Wide2& square) const {
    // Along the axis from the canopy's middle: equal depths, equal areas.
    const DiscVector<Wide> disc = square_to_disc_vector(square.x, square.y);
    const Wide depth = cap_height_ * disc.radius * disc.radius;
    const Wide across = square_root(larger(Wide{}, depth * (2.0F * radius_ - depth)));
    const Wide3 inward = (radius_ - depth) * axis_ - across * disc.x * right_ - across * disc.y * up_;
    return {ball_centre_ - inward, everywhere(1.0F / radius_) * inward, everywhere(2.0F * kPi * radius_ * cap_height_)};
}

WideEmitterPoints Emitter::points_at(const Wide2& square, const Wide3& receiver) const {
    if (kind_ == Kind::kSphere) return sphere_points(square, WideCone(receiver, centre_, radius_, axis_));
    if (kind_ == Kind::kDome) return dome_points(square);
    const Wide2 plane = flat_.points_at(square);
    return {centre_ + plane.x * right_ + plane.y * up_, Wide3(axis_), everywhere(flat_.area())};
}

WideTruth Emitter::can_light(const WideReceivers& receivers) const {
    const Wide3 away = centre_ - receivers.position;
    WideTruth lit = WideTruth{} - 1;
    if (receivers.response == Response::kFlat) lit &= dot(away, receivers.normal) > -reach_;
    if (kind_ != Kind::kSphere) lit &= dot(away, axis_) < 0.0F;
    return lit;
}

Emitter::GridWeights Emitter::grid_weights(const WideReceivers& receivers) const {
    GridWeights weights;
    for (std::size_t i = 0; i < kGridPoints; ++i) {
        const Wide3 away = Vec3(grid_.x[i], grid_.y[i], grid_.z[i]) - receivers.position;
        const Wide distance2 = dot(away, away);
        // Both cosines times the distance.
        Wide received = dot(away, receivers.normal);
        if (receivers.response == Response::kDome) received = 0.5F * (received + square_root(distance2));
        const Wide sent = -dot(away, Vec3(grid_.normal_x[i], grid_.normal_y[i], grid_.normal_z[i]));
        weights[i] = number_or_mark(larger(received, Wide{}) * larger(sent, Wide{}) / (distance2 * distance2));
    }
    return weights;
}

Emitter::GridWeights Emitter::sphere_weights(const WideReceivers& receivers) const {
    // Its squares are even in solid angle, so only the receiver's own response is left.
    const WideCone cone(receivers.position, centre_, radius_, axis_);
    GridWeights weights;
    for (std::size_t i = 0; i < kGridPoints; ++i) {
        const Vec2 square = grid_square(i);
        const Wide3 away =
            sphere_points({everywhere(square.x), everywhere(square.y)}, cone).position - receivers.position;
        const Wide cosine = dot(away, receivers.normal) / square_root(dot(away, away));
        const bool flat = receivers.response == Response::kFlat;
        weights[i] = number_or_mark(flat ? larger(cosine, Wide{}) : 0.5F * (1.0F + cosine));
    }
    return weights;
}

WideSquareDensity Emitter::density_for(const WideReceivers& receivers) const {
    const bool sphere = kind_ == Kind::kSphere;
    return {floored(sphere ? sphere_weights(receivers) : grid_weights(receivers)), can_light(receivers)};
}

}  // namespace understudy
