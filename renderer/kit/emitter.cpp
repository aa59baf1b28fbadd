#include "kit/emitter.h"

#include <algorithm>
#include <cassert>

#include "kit/density_grid.h"

namespace understudy {

namespace {

// A part of the largest weight that every grid point keeps, so that no lit place has density 0 near the horizon.
constexpr float kLeastShare = 0.02F;

template <class... Cases>
struct Overloaded : Cases... {
    using Cases::operator()...;
};
template <class... Cases>
Overloaded(Cases...) -> Overloaded<Cases...>;

float metres(double value) { return static_cast<float>(value); }

}  // namespace

float response_to(Response response, float cosine) {
    switch (response) {
        case Response::kFlat:
            return std::max(cosine, 0.0F);
        case Response::kDome:
            return 0.5F * (1.0F + cosine);
        case Response::kAround:
            break;
    }
    return 1.0F;
}

Emitter::Emitter(const ModifierShape& shape, const PlacedFront& front,
                 const std::shared_ptr<const EmissionTable>& table, const std::shared_ptr<const WebEmission>& web)
    : centre_(front.centre), axis_(front.axis), right_(front.right), up_(front.up) {
    emission_ = web ? Emission(web) : table ? Emission(table) : emission_of(shape, front);
    take_shape(shape);
    prepare_sampling();
}

Emitter::Emitter(const ModifierShape& shape, const PlacedFront& front,
                 const std::shared_ptr<const EmissionTable>& table, const std::shared_ptr<const WebEmission>& web,
                 const Emitter& before)
    : centre_(front.centre), axis_(front.axis), right_(front.right), up_(front.up) {
    emission_ = web ? Emission(web) : table ? Emission(table) : emission_of(shape, front);
    take_shape(shape);
    if (emission_ == before.emission_) sampling_ = before.sampling_;
    prepare_sampling();
}

void Emitter::take_shape(const ModifierShape& shape) {
    even_ = is_even(emission_);
    const auto rectangle = [&](const auto& s) { flat_ = FlatFront::rectangle(metres(s.width_m), metres(s.height_m)); };
    std::visit(Overloaded{[&](const RectangleShape& s) { rectangle(s); },
                          [&](const DiscShape& s) { flat_ = FlatFront::ring(metres(s.diameter_m), 0.0F); },
                          [&](const RingShape& s) { flat_ = FlatFront::ring(metres(s.diameter_m), metres(s.inner_m)); },
                          [&](const PolygonShape& s) { flat_ = FlatFront::polygon(s.sides, metres(s.diameter_m)); },
                          [&](const SphereShape& s) {
                              kind_ = Kind::kBall;
                              ball_ = Ball(centre_, 0.5F * metres(s.diameter_m), axis_);
                          },
                          [&](const DomeShape& s) {
                              kind_ = Kind::kCanopy;
                              flat_ = FlatFront::ring(metres(s.diameter_m), 0.0F);
                              canopy_ = Canopy(centre_, -axis_, right_, up_, 0.5F * metres(s.diameter_m),
                                               metres(s.depth_m), Canopy::Shines::kInside);
                          },
                          [&](const UmbrellaShape& s) { become(s); }, [&](const FrameShape& s) { rectangle(s); },
                          [&](const WindowShape& s) { rectangle(s); },
                          [&](const PointShape&) {
                              assert(!even_);  // it has a file
                              kind_ = Kind::kPoint;
                          }},
               shape);
}

void Emitter::become(const UmbrellaShape& shape) {
    kind_ = Kind::kCanopy;
    flat_ = FlatFront::ring(metres(shape.diameter_m), 0.0F);
    canopy_ = canopy_of(shape, centre_, axis_, right_, up_);
    head_ = head_of(shape, centre_, axis_);
    both_sides_ = shape.cloth == UmbrellaShape::Cloth::kThrough;
}

void Emitter::prepare_sampling() {
    if (kind_ == Kind::kPoint) {
        constexpr float kBulbRadius = 0.015F;
        even_radiance_ = 1.0F / (kPi * kPi * kBulbRadius * kBulbRadius);
        return;
    }
    if (kind_ == Kind::kBall) {
        reach_ = ball_.radius();
        even_radiance_ = 1.0F / (kPi * ball_.area());
        return;
    }
    // A canopy lets out through its rim what its whole hollow side gives: as much as a disc of the rim's size would.
    even_radiance_ = 1.0F / (kPi * flat_.area());
    reach_ =
        kind_ == Kind::kFlat ? flat_.reach() : std::max(flat_.reach(), canopy_.depth()) * (both_sides_ ? 2.0F : 1.0F);
    if (!even_) {
        if (const auto* table = std::get_if<std::shared_ptr<const EmissionTable>>(&emission_)) {
            widest_ = std::tan((*table)->layout().angles.back());
            if (!(widest_ > 0.0F)) widest_ = kInfinity;  // past the horizon by a rounding
        }
        if (!sampling_) sampling_ = std::make_shared<const EmissionSampling>(uneven_surface());
    }
    for (std::size_t i = 0; i < kGridPoints && !sampling_; ++i) {
        const EmitterPoint point = even_point(grid_square(i), centre_ + axis_);
        grid_[i] = {to_front(point.position - centre_), to_front(point.normal)};
    }
}

namespace {

constexpr Vec3 kOwnAxis{0.0F, 0.0F, 1.0F};
constexpr Vec3 kOwnRight{1.0F, 0.0F, 0.0F};
constexpr Vec3 kOwnUp{0.0F, 1.0F, 0.0F};

}  // namespace

Canopy Emitter::own_canopy() const {
    return {to_front(canopy_.rim_middle() - centre_),
            to_front(canopy_.pole()),
            kOwnRight,
            kOwnUp,
            flat_.reach(),
            canopy_.depth(),
            both_sides_ ? Canopy::Shines::kBothSides : Canopy::Shines::kInside};
}

// By a canopy, or by the head before it.
std::function<bool(const Ray&)> Emitter::own_blocking() const {
    if (kind_ != Kind::kCanopy) return nullptr;
    std::optional<Ball> head;
    if (head_) head = Ball(to_front(head_->centre() - centre_), head_->radius(), kOwnAxis);
    return [canopy = own_canopy(), head](const Ray& ray) {
        return (head && head->intersect(ray)) || canopy.intersect(ray);
    };
}

namespace {

constexpr float kMattHalfAngle = kPi / 3.0F;

// From the axis to where a light is half as strong, far away; no more than a matt front's, and a degree at least. The
// narrower its beam, the faster what a receiver sees of the front changes with its distance.
float half_angle(const UnevenSurface& surface) {
    constexpr int kPlaces = 8;
    constexpr int kSteps = 60;
    const auto intensity = [&](float angle) {
        const Vec3 way(std::sin(angle), 0.0F, std::cos(angle));
        float sum = 0.0F;
        for (int i = 0; i < kPlaces * kPlaces; ++i) {
            const int row = i / kPlaces;
            const UnevenSurface::Point point = surface.point_at(
                (Vec2(static_cast<float>(i % kPlaces), static_cast<float>(row)) + 0.5F) / static_cast<float>(kPlaces));
            sum += surface.radiance(point, 1e3F * surface.reach * way) * std::max(glm::dot(point.normal, way), 0.0F);
        }
        return sum;
    };
    const float half = 0.5F * intensity(0.0F);
    int step = 1;
    while (step < kSteps && intensity(static_cast<float>(step) / kSteps * kMattHalfAngle) > half) {
        ++step;
    }
    return static_cast<float>(step) / kSteps * kMattHalfAngle;
}

}  // namespace

// In the front's own axes and with everything of its own, so that it may be asked after this light has been moved.
UnevenSurface Emitter::uneven_surface() const {
    // Of what a hidden place shows: another receiver of the cell may see it.
    constexpr float kHidden = 0.2F;
    UnevenSurface surface;
    surface.reach = reach_;
    surface.both_sides = both_sides_;
    if (kind_ == Kind::kCanopy) {
        // The head's shadow has a sharp edge and moves with the receiver.
        surface.parallax_step = 0.05F;
        surface.point_at = [canopy = own_canopy()](const Vec2& square) {
            const EmitterPoint point = canopy.point_at(square, Vec3(0.0F, 0.0F, 1e3F));
            return UnevenSurface::Point{point.position, point.normal};
        };
    } else {
        surface.point_at = [flat = flat_](const Vec2& square) {
            return UnevenSurface::Point{Vec3(flat.point_at(square), 0.0F), kOwnAxis};
        };
    }
    surface.radiance = [emission = emission_, blocked = own_blocking()](const UnevenSurface::Point& point,
                                                                        const Vec3& receiver) {
        const Vec3 away = receiver - point.place;
        const float distance = glm::length(away);
        const Vec3 direction = away / distance;
        const bool hidden = blocked && blocked({point.place, direction, 1e-4F, distance});
        return (hidden ? kHidden : 1.0F) * radiance_of(emission, point.place, direction);
    };
    if (widest_ < kInfinity) surface.widest = std::atan(widest_);
    if (kind_ == Kind::kFlat) surface.parallax_step *= half_angle(surface) / kMattHalfAngle;
    if (const auto* sky = std::get_if<std::shared_ptr<const SkyLight>>(&emission_)) {
        constexpr float kOnBars = 1e-3F;  // dark from everywhere
        surface.across = (*sky)->edges_across(PlaceWarp::kMost);
        surface.up = (*sky)->edges_up(PlaceWarp::kMost);
        surface.least = kOnBars;
    }
    return surface;
}

Vec2 Emitter::square_of(const Vec3& point, const Vec3& receiver) const {
    if (kind_ == Kind::kPoint) return Vec2(0.5F);
    if (kind_ == Kind::kBall) return ball_.square_of(point, receiver);
    const Vec2 square = kind_ == Kind::kFlat ? flat_.square_of(to_plane(point)) : canopy_.square_of(point);
    return sampling_ ? sampling_->aim_at(to_front(receiver - centre_)).warp.even_of(square) : square;
}

std::optional<EmitterHit> Emitter::intersect_umbrella(const Ray& ray) const {
    auto hit = canopy_.intersect(ray);
    if (!head_) return hit;
    const auto head = head_->intersect(ray);
    if (!head || (hit && hit->distance < head->distance)) return hit;
    return EmitterHit{head->distance, head->normal, false};
}

bool Emitter::can_light(const Vec3& receiver, const Vec3& normal, Response response) const {
    const Vec3 away = centre_ - receiver;
    if (response == Response::kFlat && glm::dot(away, normal) <= -reach_) return false;
    if (kind_ == Kind::kBall || both_sides_) return true;
    const float before = -glm::dot(away, axis_);
    if (!(before > 0.0F)) return false;
    if (widest_ == kInfinity) return true;
    // No point of the front is nearer to standing straight before the receiver than this far aside.
    const float aside2 = glm::dot(away, away) - before * before;
    const float least = reach_ + widest_ * before;
    return aside2 <= least * least;
}

SquareDensity Emitter::never_zero(Weights weights) {
    const float strongest = *std::max_element(weights.begin(), weights.end());
    const float largest = strongest > 0.0F ? strongest : 1.0F;
    const float least = kLeastShare * largest;
    for (float& weight : weights) weight = weight < 0.0F ? largest : std::max(weight, least);
    return SquareDensity(weights);
}

std::optional<SquareDensity> Emitter::density_for(const Vec3& receiver, const Vec3& normal, Response response) const {
    if (kind_ == Kind::kPoint) return point_density(receiver, normal, response);
    if (!can_light(receiver, normal, response)) return std::nullopt;
    if (kind_ == Kind::kBall) return ball_density(receiver, normal, response);
    // Of the cosine in the answer: all of a flat receptor's, half of a dome's, nothing of what answers to all alike.
    const float own = response == Response::kFlat ? 1.0F : response == Response::kDome ? 0.5F : 0.0F;
    const Vec3 at = to_front(receiver - centre_);
    const Vec3 facing = to_front(normal);
    const Grid& grid = sampling_ ? sampling_->aim_at(at).grid : grid_;
    Weights weights{};
    for (std::size_t i = 0; i < kGridPoints; ++i) {
        const Vec3 away = grid[i].place - at;
        const float distance2 = glm::dot(away, away);
        // Both cosines times the distance; for a dome (1 + cosine) / 2 in place of the receiver's.
        const float received = own * glm::dot(away, facing) + (1.0F - own) * std::sqrt(distance2);
        const float seen = -glm::dot(away, grid[i].normal);
        const float sent = both_sides_ ? std::abs(seen) : seen;
        const float weight = std::max(received, 0.0F) * std::max(sent, 0.0F) / (distance2 * distance2);
        // A receiver on the front itself: no number comes of it, so the point will count as much as the strongest.
        weights[i] = weight < kInfinity ? weight : -1.0F;
    }
    return never_zero(weights);
}

std::optional<SquareDensity> Emitter::point_density(const Vec3& receiver, const Vec3& normal, Response response) const {
    const Vec3 away = centre_ - receiver;
    const float distance = glm::length(away);
    if (!(distance > 0.0F) || (response == Response::kFlat && glm::dot(away, normal) <= 0.0F)) return std::nullopt;
    if (!(radiance(centre_, -away / distance) > 0.0F)) return std::nullopt;
    std::array<float, kGridPoints> anywhere{};
    anywhere.fill(1.0F);
    return SquareDensity(anywhere);
}

std::optional<SquareDensity> Emitter::ball_density(const Vec3& receiver, const Vec3& normal, Response response) const {
    // Its squares are even in solid angle, so only the receiver's own response and the emission are left.
    Weights weights{};
    for (std::size_t i = 0; i < kGridPoints; ++i) {
        const Vec3 toward = glm::normalize(ball_.point_at(grid_square(i), receiver).position - receiver);
        float weight = response_to(response, glm::dot(toward, normal));
        if (!even_) {
            const EmitterPoint point = ball_.point_at(place_inwards(grid_square(i)), receiver);
            weight *= radiance(point.position, glm::normalize(receiver - point.position));
        }
        weights[i] = weight < kInfinity ? weight : -1.0F;
    }
    return never_zero(weights);
}

std::vector<Vec3> Emitter::outline(const Vec3& seen_from, int count) const {
    if (kind_ == Kind::kBall) return ball_.outline(seen_from, count);
    std::vector<Vec3> points;
    if (kind_ == Kind::kPoint) {
        points.assign(static_cast<std::size_t>(count), centre_);
        return points;
    }
    points.reserve(static_cast<std::size_t>(count));
    const Vec3 middle = kind_ == Kind::kFlat ? centre_ : canopy_.rim_middle();
    for (const Vec2& point : flat_.outline(count)) points.push_back(middle + point.x * right_ + point.y * up_);
    return points;
}

}  // namespace understudy
