// The luminous front of a modifier in the studio: where it is, what it shows, and how it is sampled.
//
// Flat fronts shine one way and are black behind; a sphere shines all round; a canopy shines from its hollow side, a
// shoot-through's from both. A point gives a photometric file's light and is never met by a ray. What each point shows
// in each direction is the emission's matter (emission.h): most simply the same everywhere.
//
// One way to sample any of them. A shape maps the unit square onto its surface, evenly in area or, a sphere, in solid
// angle, and an uneven light's square is spread over its brighter places first (emission_sampling.h); the smooth
// integrand (both cosines over the squared distance) on a 3 × 3 grid of the square gives a density that is linear
// between the grid's points, known exactly and never zero (product sampling by a warp, after Hart and others,
// "Practical Product Sampling by Fitting and Composing Warps", EGSR 2020).
#pragma once

#include <array>
#include <memory>
#include <optional>
#include <vector>

#include "base/geometry.h"
#include "kit/ball.h"
#include "kit/canopy.h"
#include "kit/emission.h"
#include "kit/emission_sampling.h"
#include "kit/emitter_point.h"
#include "kit/flat_front.h"
#include "kit/square_density.h"
#include "setup/placement.h"
#include "setup/setup.h"

namespace understudy {

// How a receiver answers to light from an angle off its axis.
enum class Response {
    kFlat,    // cosine: a surface, a flat receptor
    kDome,    // (1 + cosine) / 2 all round: a hemispherical receptor
    kAround,  // from everywhere alike: a hair
};

float response_to(Response response, float cosine);

// Sixteen of each.
struct WideReceivers {
    Wide3 position, normal;
    Response response = Response::kFlat;
};
struct WideSquareDensity {
    SquareDensityOf<Wide> density;
    WideTruth lit;  // not set where no part of the front can light the receiver
};

class Emitter {
  public:
    // With what was traced through the modifier, if it was, or a photometric file's light. A point needs the latter.
    Emitter(const ModifierShape& shape, const PlacedFront& front,
            const std::shared_ptr<const EmissionTable>& table = nullptr,
            const std::shared_ptr<const WebEmission>& web = nullptr);
    // The same modifier somewhere else: what was worked out for `before` is taken over where it has the same source.
    Emitter(const ModifierShape& shape, const PlacedFront& front, const std::shared_ptr<const EmissionTable>& table,
            const std::shared_ptr<const WebEmission>& web, const Emitter& before);

    // Radiance for 1 lm of light out of the modifier, 1/(sr·m²), of a luminous point (in the studio) in a unit
    // direction away from it, on the luminous side.
    float radiance(const Vec3& point, const Vec3& direction) const {
        if (even_) return even_radiance_;
        return radiance_of(emission_, to_front(point - centre_), to_front(direction));
    }
    // What it would be were it the same everywhere and in every direction. A point has none: for comparing lights it is
    // told as if it were a bulb that shows a disc of 3 cm.
    float even_radiance() const { return even_radiance_; }
    const Vec3& centre() const { return centre_; }
    const Vec3& axis() const { return axis_; }

    // square in [0, 1]²; a sphere shows each receiver only the cap that faces it.
    EmitterPoint point_at(const Vec2& square, const Vec3& receiver) const {
        if (!sampling_) return even_point(square, receiver);
        const PlaceWarp::Place place = sampling_->aim_at(to_front(receiver - centre_)).warp.at(square);
        EmitterPoint point = even_point(place.square, receiver);
        point.area *= place.stretch;
        return point;
    }
    WideEmitterPoints points_at(const Wide2& square, const Wide3& receiver) const;
    // The same, spread evenly whatever the light: also where it is dark, or hidden by something of its own.
    EmitterPoint even_point(const Vec2& square, const Vec3& receiver) const {
        if (kind_ == Kind::kFlat) return {to_studio(flat_.point_at(square)), axis_, flat_.area()};
        if (kind_ == Kind::kPoint) return speck_toward(receiver);
        return kind_ == Kind::kBall ? ball_.point_at(square, receiver) : canopy_.point_at(square, receiver);
    }
    // The inverse of point_at, for a point on the luminous surface.
    Vec2 square_of(const Vec3& point, const Vec3& receiver) const;

    std::optional<EmitterHit> intersect(const Ray& ray) const {
        if (kind_ == Kind::kPoint) return std::nullopt;
        if (kind_ != Kind::kFlat) return kind_ == Kind::kBall ? ball_.intersect(ray) : intersect_umbrella(ray);
        const float distance = flat_distance(ray);
        if (distance == kInfinity) return std::nullopt;
        return EmitterHit{distance, axis_, glm::dot(ray.direction, axis_) < 0.0F};
    }
    // False only for rays that miss it: sooner told for sixteen than asked one by one.
    WideTruth may_meet(const WideRays& rays) const {
        if (kind_ == Kind::kPoint) return WideTruth{};
        if (kind_ == Kind::kFlat) return may_meet_flat(rays, flat_, centre_, axis_, right_, up_);
        if (kind_ == Kind::kBall) return may_meet_ball(rays, ball_.centre(), ball_.radius());
        const WideTruth canopy = may_meet_ball(rays, canopy_.sphere_centre(), canopy_.sphere_radius());
        return head_ ? canopy | may_meet_ball(rays, head_->centre(), head_->radius()) : canopy;
    }
    // Whether it does, without what makes a hit.
    bool blocks(const Ray& ray) const {
        return kind_ == Kind::kFlat ? flat_distance(ray) < kInfinity : intersect(ray).has_value();
    }

    // None when no part of the front can light the receiver.
    std::optional<SquareDensity> density_for(const Vec3& receiver, const Vec3& normal, Response response) const;
    WideSquareDensity density_for(const WideReceivers& receivers) const;

    // Points round the edge as seen from a place, for drawing the outline's mirror image.
    std::vector<Vec3> outline(const Vec3& seen_from, int count) const;

  private:
    enum class Kind { kFlat, kBall, kCanopy, kPoint };
    struct WideCone;
    using GridWeights = std::array<Wide, 9>;
    GridWeights grid_weights(const WideReceivers& receivers) const;
    GridWeights ball_weights(const WideReceivers& receivers) const;
    WideEmitterPoints ball_points(const Wide2& square, const WideCone& cone) const;
    WideEmitterPoints even_points(const Wide2& square, const Wide3& receiver) const;
    WideEmitterPoints canopy_points(const Wide2& square, const Wide3& receiver) const;
    WideTruth can_light(const WideReceivers& receivers) const;
    void become(const UmbrellaShape& shape);
    void take_shape(const ModifierShape& shape);
    void prepare_sampling();
    UnevenSurface uneven_surface() const;
    Canopy own_canopy() const;
    std::function<bool(const Ray&)> own_blocking() const;
    Vec3 to_studio(const Vec2& plane) const { return centre_ + plane.x * right_ + plane.y * up_; }
    Vec2 to_plane(const Vec3& point) const {
        return {glm::dot(point - centre_, right_), glm::dot(point - centre_, up_)};
    }
    Vec3 to_front(const Vec3& vector) const {
        return {glm::dot(vector, right_), glm::dot(vector, up_), glm::dot(vector, axis_)};
    }
    Wide3 to_front(const Wide3& vector) const { return {dot(vector, right_), dot(vector, up_), dot(vector, axis_)}; }
    EmitterPoint speck_toward(const Vec3& receiver) const {
        return {centre_, glm::normalize(receiver - centre_), static_cast<float>(kPointArea)};
    }
    std::optional<SquareDensity> point_density(const Vec3& receiver, const Vec3& normal, Response response) const;
    std::optional<SquareDensity> ball_density(const Vec3& receiver, const Vec3& normal, Response response) const;
    // Infinity when it is missed.
    float flat_distance(const Ray& ray) const {
        const float slope = glm::dot(ray.direction, axis_);
        const float height = glm::dot(centre_ - ray.origin, axis_);
        if (!(slope * height > 0.0F)) return kInfinity;
        const float distance = height / slope;
        if (distance <= ray.near || distance >= ray.far) return kInfinity;
        return flat_.contains(to_plane(ray.at(distance))) ? distance : kInfinity;
    }
    std::optional<EmitterHit> intersect_umbrella(const Ray& ray) const;
    bool can_light(const Vec3& receiver, const Vec3& normal, Response response) const;

    Kind kind_ = Kind::kFlat;
    FlatFront flat_ = FlatFront::rectangle(1.0F, 1.0F);  // of a canopy, its rim
    Ball ball_{Vec3(0.0F), 1.0F, Vec3(0.0F, 0.0F, 1.0F)};
    Canopy canopy_;
    std::optional<Ball> head_;  // the black flash head before a canopy
    bool both_sides_ = false;
    bool even_ = true;
    Vec3 centre_{0.0F};
    Vec3 axis_{0.0F, 0.0F, 1.0F};
    Vec3 right_{1.0F, 0.0F, 0.0F};
    Vec3 up_{0.0F, 1.0F, 0.0F};
    float reach_ = 0.0F;  // farthest luminous point from the centre
    float even_radiance_ = 0.0F;
    Emission emission_;
    float widest_ = kInfinity;  // the tangent of the angle to the axis beyond which there is no light
    std::shared_ptr<const EmissionSampling> sampling_;  // of an uneven emission, but on a ball

    using Grid = std::array<UnevenSurface::Point, kGridPoints>;  // in the front's axes
    // A weight for each point; below 0 where no number came of it.
    using Weights = std::array<float, kGridPoints>;
    static SquareDensity never_zero(Weights weights);
    Grid grid_{};  // of an even one
};

}  // namespace understudy
