#include "kit/emitter.h"

#include <algorithm>

#include "kit/density_grid.h"
#include "kit/square_maps.h"

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

}  // namespace

float response_to(Response response, float cosine) {
    return response == Response::kFlat ? std::max(cosine, 0.0F) : 0.5F * (1.0F + cosine);
}

Emitter::Emitter(const ModifierShape& shape, const PlacedFront& front)
    : centre_(front.centre), axis_(front.axis), right_(front.right), up_(front.up) {
    const auto metres = [](double value) { return static_cast<float>(value); };
    std::visit(Overloaded{[&](const RectangleShape& s) {
                              flat_ = FlatFront::rectangle(metres(s.width_m), metres(s.height_m));
                          },
                          [&](const DiscShape& s) { flat_ = FlatFront::ring(metres(s.diameter_m), 0.0F); },
                          [&](const RingShape& s) { flat_ = FlatFront::ring(metres(s.diameter_m), metres(s.inner_m)); },
                          [&](const PolygonShape& s) { flat_ = FlatFront::polygon(s.sides, metres(s.diameter_m)); },
                          [&](const SphereShape& s) {
                              kind_ = Kind::kSphere;
                              radius_ = 0.5F * metres(s.diameter_m);
                              ball_centre_ = centre_;
                          },
                          [&](const DomeShape& s) {
                              kind_ = Kind::kDome;
                              flat_ = FlatFront::ring(metres(s.diameter_m), 0.0F);  // the rim
                              const float rim = 0.5F * metres(s.diameter_m);
                              cap_height_ = metres(s.depth_m);
                              radius_ = (rim * rim + cap_height_ * cap_height_) / (2.0F * cap_height_);
                              ball_centre_ = centre_ + (radius_ - cap_height_) * axis_;
                          }},
               shape);
    if (kind_ == Kind::kSphere) {
        reach_ = radius_;
        even_radiance_ = 1.0F / (kPi * 4.0F * kPi * radius_ * radius_);
        return;
    }
    // A dome lets out through its rim what its whole hollow side gives: as much as a disc of the rim's size would.
    even_radiance_ = 1.0F / (kPi * flat_.area());
    reach_ = std::max(flat_.reach(), cap_height_);
    for (std::size_t i = 0; i < kGridPoints; ++i) grid_.set(i, point_at(grid_square(i), centre_));
}

namespace {

// The cone in which a receiver sees a ball; from a place inside the ball, half of all directions.
struct Cone {
    float distance;  // receiver to the ball's centre
    float depth;     // 1 − cosine of the half angle
    Frame frame;     // its normal from the receiver to the centre

    Cone(const Vec3& receiver, const Vec3& centre, float radius, const Vec3& any_way) {
        const Vec3 toward = centre - receiver;
        const float real_distance = glm::length(toward);
        distance = std::max(real_distance, radius);
        const float sine2 = std::min(1.0F, radius * radius / (distance * distance));
        depth = sine2 / (1.0F + std::sqrt(1.0F - sine2));
        frame = Frame::around(real_distance > 0.0F ? toward / real_distance : any_way);
    }
    float solid_angle() const { return 2.0F * kPi * depth; }
};

}  // namespace

EmitterPoint Emitter::sphere_point(const Vec2& square, const Vec3& receiver) const {
    // Even in solid angle (Shirley, Wang and Zimmerman, "Monte Carlo Techniques for Direct Lighting Calculations",
    // ACM TOG 15(1), 1996): evenly by area, the many points near the edge would all be seen at grazing angles.
    const Cone cone(receiver, centre_, radius_, axis_);
    const DiscVector<float> disc = square_to_disc_vector(square.x, square.y);
    const float sunk = cone.depth * disc.radius * disc.radius;
    const float cosine = 1.0F - sunk;
    const float sine2 = sunk * (2.0F - sunk);
    const float half_chord = std::sqrt(std::max(0.0F, radius_ * radius_ - cone.distance * cone.distance * sine2));
    // In forms that do not cancel for a small ball far away.
    const float distance = cone.distance * cosine - half_chord;
    const float toward_receiver = cone.distance * sine2 + half_chord * cosine;
    const float aside = distance * std::sqrt(sine2);
    const Vec3 normal =
        glm::normalize(cone.frame.to_world({aside * disc.x, aside * disc.y, -toward_receiver}));
    constexpr float kLeastCosine = 1e-4F;  // one sample in 10⁸ lies nearer to the edge
    const float facing = std::max(half_chord / radius_, kLeastCosine);
    return {centre_ + radius_ * normal, normal, cone.solid_angle() * distance * distance / facing};
}

EmitterPoint Emitter::dome_point(const Vec2& square) const {
    // Along the axis from the canopy's middle: equal depths, equal areas.
    const DiscVector<float> disc = square_to_disc_vector(square.x, square.y);
    const float depth = cap_height_ * disc.radius * disc.radius;
    const float across = std::sqrt(std::max(0.0F, depth * (2.0F * radius_ - depth)));
    const Vec3 position =
        ball_centre_ + (depth - radius_) * axis_ + across * disc.x * right_ + across * disc.y * up_;
    return {position, (ball_centre_ - position) / radius_, 2.0F * kPi * radius_ * cap_height_};
}

Vec2 Emitter::square_of(const Vec3& point, const Vec3& receiver) const {
    if (kind_ == Kind::kFlat) return flat_.square_of(to_plane(point));
    if (kind_ == Kind::kDome) {
        const float depth = glm::dot(point - ball_centre_, axis_) + radius_;
        const Vec2 plane = to_plane(point);
        return disc_to_square({std::sqrt(std::clamp(depth / cap_height_, 0.0F, 1.0F)), std::atan2(plane.y, plane.x)});
    }
    const Cone cone(receiver, centre_, radius_, axis_);
    const Vec3 local = glm::normalize(cone.frame.to_local(point - receiver));
    const float sine2 = local.x * local.x + local.y * local.y;
    const float sunk = local.z > 0.0F ? sine2 / (1.0F + local.z) : 1.0F;
    return disc_to_square({std::sqrt(std::min(1.0F, sunk / cone.depth)), std::atan2(local.y, local.x)});
}

namespace {

// Both distances at which a line meets a sphere, by the closest approach, which stays exact for small distant spheres.
std::optional<std::array<float, 2>> sphere_distances(const Ray& ray, const Vec3& centre, float radius) {
    const Vec3 toward = centre - ray.origin;
    const float along = glm::dot(toward, ray.direction);
    const Vec3 aside = toward - along * ray.direction;
    const float inside = radius * radius - glm::dot(aside, aside);
    if (inside < 0.0F) return std::nullopt;
    const float half = std::sqrt(inside);
    return std::array<float, 2>{along - half, along + half};
}

}  // namespace

std::optional<EmitterHit> Emitter::intersect_sphere(const Ray& ray) const {
    const auto distances = sphere_distances(ray, centre_, radius_);
    if (!distances) return std::nullopt;
    for (const float distance : *distances) {
        if (distance <= ray.near || distance >= ray.far) continue;
        const Vec3 normal = (ray.at(distance) - centre_) / radius_;
        return EmitterHit{distance, normal, glm::dot(normal, ray.direction) < 0.0F};
    }
    return std::nullopt;
}

std::optional<EmitterHit> Emitter::intersect_dome(const Ray& ray) const {
    const auto distances = sphere_distances(ray, ball_centre_, radius_);
    if (!distances) return std::nullopt;
    for (const float distance : *distances) {
        if (distance <= ray.near || distance >= ray.far) continue;
        const Vec3 point = ray.at(distance);
        if (glm::dot(point - centre_, axis_) > 0.0F) continue;  // the part of the sphere that is no canopy
        const Vec3 normal = (ball_centre_ - point) / radius_;
        return EmitterHit{distance, normal, glm::dot(normal, ray.direction) < 0.0F};
    }
    return std::nullopt;
}

bool Emitter::can_light(const Vec3& receiver, const Vec3& normal, Response response) const {
    const Vec3 away = centre_ - receiver;
    if (response == Response::kFlat && glm::dot(away, normal) <= -reach_) return false;
    return kind_ == Kind::kSphere || glm::dot(away, axis_) < 0.0F;
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
    if (!can_light(receiver, normal, response)) return std::nullopt;
    if (kind_ == Kind::kSphere) return sphere_density(receiver, normal, response);
    const bool dome = response == Response::kDome;
    Lanes lanes;
    for (std::size_t i = 0; i < Grid::kLanes; ++i) {
        const float x = grid_.x[i] - receiver.x;
        const float y = grid_.y[i] - receiver.y;
        const float z = grid_.z[i] - receiver.z;
        const float distance2 = x * x + y * y + z * z;
        // Both cosines times the distance; for a dome (1 + cosine) / 2.
        const float along = x * normal.x + y * normal.y + z * normal.z;
        const float received = dome ? 0.5F * (along + std::sqrt(distance2)) : along;
        const float sent = -(x * grid_.normal_x[i] + y * grid_.normal_y[i] + z * grid_.normal_z[i]);
        const float product = (received > 0.0F ? received : 0.0F) * (sent > 0.0F ? sent : 0.0F);
        const float weight = product / (distance2 * distance2);
        // A receiver on the front itself: no number comes of it, so the point will count as much as the strongest.
        lanes.values[i] = weight < kInfinity ? weight : -1.0F;
    }
    return never_zero(lanes);
}

std::optional<SquareDensity> Emitter::sphere_density(const Vec3& receiver, const Vec3& normal,
                                                     Response response) const {
    // Its squares are even in solid angle, so only the receiver's own response is left.
    Lanes weights{};
    for (std::size_t i = 0; i < kGridPoints; ++i) {
        const Vec3 toward = glm::normalize(sphere_point(grid_square(i), receiver).position - receiver);
        const float weight = response_to(response, glm::dot(toward, normal));
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
    std::vector<Vec3> points;
    points.reserve(static_cast<std::size_t>(count));
    if (kind_ != Kind::kSphere) {
        for (const Vec2& point : flat_.outline(count)) points.push_back(to_studio(point));
        return points;
    }
    const Vec3 toward = seen_from - centre_;
    const float distance = glm::length(toward);
    const float cosine = std::min(1.0F, radius_ / distance);
    const float sine = std::sqrt(1.0F - cosine * cosine);
    const Frame frame = Frame::around(toward / distance);
    for (int i = 0; i < count; ++i) {
        const float angle = 2.0F * kPi * static_cast<float>(i) / static_cast<float>(count);
        points.push_back(centre_ + radius_ * frame.to_world({sine * std::cos(angle), sine * std::sin(angle), cosine}));
    }
    return points;
}

}  // namespace understudy
