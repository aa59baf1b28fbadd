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
    }
    if (!even_ && !sampling_) {
        const Vec3 before = centre_ + 1e3F * axis_;
        const auto point_at = [&](const Vec2& square) {
            const EmitterPoint point = even_point(square, before);
            return UnevenSurface::Point{to_front(point.position - centre_), to_front(point.normal)};
        };
        const auto radiance = [&](const Vec3& place, const Vec3& direction) {
            return radiance_of(emission_, place, direction);
        };
        sampling_ = std::make_shared<const EmissionSampling>(UnevenSurface{point_at, radiance});
    }
    for (std::size_t i = 0; i < kGridPoints; ++i) grid_.set(i, point_at(grid_square(i), centre_ + axis_));
}

Vec2 Emitter::square_of(const Vec3& point, const Vec3& receiver) const {
    if (kind_ == Kind::kPoint) return Vec2(0.5F);
    if (kind_ == Kind::kBall) return ball_.square_of(point, receiver);
    const Vec2 square = kind_ == Kind::kFlat ? flat_.square_of(to_plane(point)) : canopy_.square_of(point);
    return sampling_ ? sampling_->warp().even_of(square) : square;
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

SquareDensity Emitter::never_zero(Lanes lanes) {
    // As a tree: a chain of comparisons would have to be waited for one by one.
    const auto& v = lanes.values;
    const auto more = [](float a, float b) { return a > b ? a : b; };
    const float strongest =
        more(more(more(more(v[0], v[1]), more(v[2], v[3])), more(more(v[4], v[5]), more(v[6], v[7]))), v[8]);
    const float largest = strongest > 0.0F ? strongest : 1.0F;
    const float least = kLeastShare * largest;
    for (float& value : lanes.values) value = value < 0.0F ? largest : (value > least ? value : least);
    std::array<float, kGridPoints> weights{};
    std::copy_n(lanes.values.begin(), kGridPoints, weights.begin());
    return SquareDensity(weights);
}

std::optional<SquareDensity> Emitter::density_for(const Vec3& receiver, const Vec3& normal, Response response) const {
    if (kind_ == Kind::kPoint) return point_density(receiver, normal, response);
    if (!can_light(receiver, normal, response)) return std::nullopt;
    if (kind_ == Kind::kBall) return ball_density(receiver, normal, response);
    // Of the cosine in the answer: all of a flat receptor's, half of a dome's, nothing of what answers to all alike.
    const float own = response == Response::kFlat ? 1.0F : response == Response::kDome ? 0.5F : 0.0F;
    Lanes lanes;
    for (std::size_t i = 0; i < Grid::kLanes; ++i) {
        const float x = grid_.x[i] - receiver.x;
        const float y = grid_.y[i] - receiver.y;
        const float z = grid_.z[i] - receiver.z;
        const float distance2 = x * x + y * y + z * z;
        // Both cosines times the distance; for a dome (1 + cosine) / 2 in place of the receiver's.
        const float along = x * normal.x + y * normal.y + z * normal.z;
        const float received = own * along + (1.0F - own) * std::sqrt(distance2);
        const float facing = -(x * grid_.normal_x[i] + y * grid_.normal_y[i] + z * grid_.normal_z[i]);
        const float sent = both_sides_ ? std::abs(facing) : facing;
        const float product = (received > 0.0F ? received : 0.0F) * (sent > 0.0F ? sent : 0.0F);
        const float weight = product / (distance2 * distance2);
        // A receiver on the front itself: no number comes of it, so the point will count as much as the strongest.
        lanes.values[i] = weight < kInfinity ? weight : -1.0F;
    }
    if (sampling_) weigh_by_emission(receiver, lanes);
    return never_zero(lanes);
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

void Emitter::weigh_by_emission(const Vec3& receiver, Lanes& lanes) const {
    std::array<float, Grid::kLanes> rights;
    std::array<float, Grid::kLanes> ups;
    for (std::size_t i = 0; i < Grid::kLanes; ++i) {
        const float x = receiver.x - grid_.x[i];
        const float y = receiver.y - grid_.y[i];
        const float z = receiver.z - grid_.z[i];
        const float inverse = 1.0F / std::sqrt(x * x + y * y + z * z);
        rights[i] = (x * right_.x + y * right_.y + z * right_.z) * inverse;
        ups[i] = (x * up_.x + y * up_.y + z * up_.z) * inverse;
    }
    for (std::size_t i = 0; i < kGridPoints; ++i) {
        lanes.values[i] *= sampling_->rough(i, sampling_->cell_of(rights[i], ups[i]));
    }
}

std::optional<SquareDensity> Emitter::ball_density(const Vec3& receiver, const Vec3& normal, Response response) const {
    // Its squares are even in solid angle, so only the receiver's own response and the emission are left.
    Lanes weights{};
    for (std::size_t i = 0; i < kGridPoints; ++i) {
        const Vec3 toward = glm::normalize(ball_.point_at(grid_square(i), receiver).position - receiver);
        float weight = response_to(response, glm::dot(toward, normal));
        if (!even_) {
            const EmitterPoint point = ball_.point_at(place_inwards(grid_square(i)), receiver);
            weight *= radiance(point.position, glm::normalize(receiver - point.position));
        }
        weights.values[i] = weight < kInfinity ? weight : -1.0F;
    }
    return never_zero(weights);
}

void Emitter::Grid::set(std::size_t lane, const EmitterPoint& point) {
    x[lane] = point.position.x;
    y[lane] = point.position.y;
    z[lane] = point.position.z;
    normal_x[lane] = point.normal.x;
    normal_y[lane] = point.normal.y;
    normal_z[lane] = point.normal.z;
}

std::vector<Vec3> Emitter::outline(const Vec3& seen_from, int count) const {
    if (kind_ == Kind::kBall) return ball_.outline(seen_from, count);
    if (kind_ == Kind::kPoint) return std::vector<Vec3>(static_cast<std::size_t>(count), centre_);
    std::vector<Vec3> points;
    points.reserve(static_cast<std::size_t>(count));
    const Vec3 middle = kind_ == Kind::kFlat ? centre_ : canopy_.rim_middle();
    for (const Vec2& point : flat_.outline(count)) points.push_back(middle + point.x * right_ + point.y * up_);
    return points;
}

}  // namespace understudy
