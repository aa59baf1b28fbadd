#include "kit/head_lit.h"

#include <algorithm>
#include <cmath>

#include "scatter/directional_albedo.h"

namespace understudy {

namespace {

constexpr Vec3 kAxis{0.0F, 0.0F, 1.0F};
constexpr Vec3 kRight{1.0F, 0.0F, 0.0F};
constexpr Vec3 kUp{0.0F, 1.0F, 0.0F};

float metres(double value) { return static_cast<float>(value); }

bool shoots_through(const UmbrellaShape& shape) { return shape.cloth == UmbrellaShape::Cloth::kThrough; }

LitCloth cloth_of(const UmbrellaShape& shape) {
    if (shoots_through(shape)) return LitCloth::shoot_through();
    return shape.cloth == UmbrellaShape::Cloth::kSilver ? LitCloth::silver() : LitCloth::white();
}

// cosⁿ is a half at half the beam's angle.
float exponent_of_beam(double beam_deg) {
    return static_cast<float>(std::log(0.5) / std::log(std::cos(radians(0.5 * beam_deg))));
}

}  // namespace

Canopy canopy_of(const UmbrellaShape& shape, const Vec3& front, const Vec3& axis, const Vec3& right, const Vec3& up) {
    const bool through = shoots_through(shape);
    const float depth = metres(shape.depth_m);
    return {through ? front - depth * axis : front,
            through ? axis : -axis,
            right,
            up,
            metres(0.5 * shape.diameter_m),
            depth,
            through ? Canopy::Shines::kBothSides : Canopy::Shines::kInside};
}

Ball head_of(const UmbrellaShape& shape, const Vec3& front, const Vec3& axis) {
    const double radius = 0.5 * shape.head_diameter_m;
    const double along =
        shoots_through(shape) ? -shape.head.distance_m - radius : shape.head.distance_m - shape.depth_m + radius;
    return {front + metres(along) * axis, metres(radius), axis};
}

HeadLit::HeadLit(const UmbrellaShape& shape) : HeadLit(shape, cloth_of(shape)) {}

HeadLit::HeadLit(const UmbrellaShape& shape, const LitCloth& cloth)
    : cloth_(cloth),
      exponent_(exponent_of_beam(shape.head.beam_deg)),
      canopy_(canopy_of(shape, Vec3(0.0F), kAxis, kRight, kUp)),
      head_ball_(head_of(shape, Vec3(0.0F), kAxis)) {
    beam_ = canopy_->pole();
    head_ = canopy_->rim_middle() + metres(shape.depth_m - shape.head.distance_m) * beam_;
    light_itself();
    share_out_ = canopy_flux();
    scale_ = static_cast<float>(1.0 / share_out_);
}

HeadLit::HeadLit(const FrameShape& shape)
    : cloth_(LitCloth::frame(metres(shape.transmission))),
      head_(0.0F, 0.0F, -metres(shape.head.distance_m)),
      beam_(kAxis),
      exponent_(exponent_of_beam(shape.head.beam_deg)) {
    const DirectionalAlbedo facets = DirectionalAlbedo::of_gloss(cloth_.through.alpha, [](float) { return 1.0F; });
    constexpr int kSide = 256;  // of a quarter of the cloth
    const double cell = 0.25 * shape.width_m * shape.height_m / (kSide * kSide);
    double flux = 0.0;
    for (int i = 0; i < kSide * kSide; ++i) {
        const int row = i / kSide;
        const Vec3 place(metres(0.5 * shape.width_m * (i % kSide + 0.5) / kSide),
                         metres(0.5 * shape.height_m * (row + 0.5) / kSide), 0.0F);
        const Vec3 to_head = head_ - place;
        const float cosine = -to_head.z / glm::length(to_head);
        const float sent_on = cloth_.through.matt + cloth_.through.lobe * facets.at(std::abs(cosine));
        flux += 4.0 * cell * static_cast<double>(sent_on * head_light(to_head, normal_at(place)));
    }
    share_out_ = flux;
    scale_ = static_cast<float>(1.0 / flux);
}

Vec3 HeadLit::normal_at(const Vec3& place) const { return canopy_ ? canopy_->inward(place) : -kAxis; }

// lx for 1 lm of the head.
float HeadLit::head_light(const Vec3& to_head, const Vec3& normal) const {
    const float distance2 = glm::dot(to_head, to_head);
    const float distance = std::sqrt(distance2);
    const float received = glm::dot(to_head, normal) / distance;
    const float sent = -glm::dot(to_head, beam_) / distance;
    if (!(received > 0.0F && sent > 0.0F)) return 0.0F;
    return (exponent_ + 1.0F) / (2.0F * kPi) * std::pow(sent, exponent_) * received / distance2;
}

float HeadLit::between(const ByDepth& values, float share) {
    const float place = std::clamp(share, 0.0F, 1.0F) * static_cast<float>(kDepths - 1);
    const auto index = std::min(static_cast<std::size_t>(place), kDepths - 2);
    const float part = place - static_cast<float>(index);
    return values[index] + part * (values[index + 1] - values[index]);
}

float HeadLit::share_of_depth(const Vec3& place) const {
    const float height = glm::dot(place - canopy_->sphere_centre(), canopy_->pole());
    return (canopy_->sphere_radius() - height) / canopy_->depth();
}

float HeadLit::raw_radiance(const Vec3& place, const Vec3& direction) const {
    const Vec3 normal = normal_at(place);
    const Vec3 to_head = head_ - place;
    const float depth = canopy_ ? share_of_depth(place) : 0.0F;
    const float from_head = canopy_ ? between(from_head_, depth) : head_light(to_head, normal);
    const float self = canopy_ ? self_light(depth) : 0.0F;
    const float up = glm::dot(direction, normal);
    const LitCloth::Side& side = up > 0.0F ? cloth_.back : cloth_.through;
    const Vec3 folded = up > 0.0F ? direction : direction - 2.0F * up * normal;
    const float matt = (side.matt * from_head + side.all() * self) / kPi;
    if (!(side.lobe > 0.0F && from_head > 0.0F)) return matt;
    return matt + from_head * lobe_value(side, normal, glm::normalize(to_head), folded);
}

float HeadLit::radiance(const Vec3& place, const Vec3& direction) const {
    return scale_ * raw_radiance(place, direction);
}

void HeadLit::light_itself() {
    constexpr int kAround = 96;
    constexpr int kDown = 96;
    const float radius = canopy_->sphere_radius();
    const float cell = canopy_->area() / static_cast<float>(kAround * kDown);
    const float kernel = cell / (4.0F * radius * radius);
    const auto place_at = [&](float share, float turn) {
        const float sunk = share * canopy_->depth();
        const float across = std::sqrt(std::max(0.0F, sunk * (2.0F * radius - sunk)));
        return canopy_->sphere_centre() + (radius - sunk) * canopy_->pole() +
               across * Vec3(std::cos(turn), std::sin(turn), 0.0F);
    };
    const auto at_depth = [&](std::size_t d) {
        return place_at(static_cast<float>(d) / static_cast<float>(kDepths - 1), 0.0F);
    };
    for (std::size_t d = 0; d < kDepths; ++d) {
        from_head_[d] = head_light(head_ - at_depth(d), normal_at(at_depth(d)));
    }
    // Once from every point of the canopy to every depth, the self light still nothing.
    ByDepth first{};
    for (std::size_t d = 0; d < kDepths; ++d) {
        const Vec3 here = at_depth(d);
        for (int i = 0; i < kAround * kDown; ++i) {
            const int down = i / kAround;
            // Half the canopy mirrors the other.
            const Vec3 there = place_at((static_cast<float>(down) + 0.5F) / kDown,
                                        kPi * (static_cast<float>(i % kAround) + 0.5F) / kAround);
            first[d] += kernel * raw_radiance(there, glm::normalize(here - there));
        }
    }
    // What is sent on matt after that is the same everywhere: the series of reflectance times the canopy's share of its
    // own sphere.
    double mean = 0.0;
    for (std::size_t d = 0; d + 1 < kDepths; ++d) {
        mean += 0.5 * static_cast<double>(first[d] + first[d + 1]) / (kDepths - 1);
    }
    const double sent_on = static_cast<double>(cloth_.back.all()) * static_cast<double>(canopy_->depth()) /
                           (2.0 * static_cast<double>(radius));
    const double more = sent_on * mean / (1.0 - sent_on);
    for (std::size_t d = 0; d < kDepths; ++d) self_light_[d] = first[d] + static_cast<float>(more);
}

bool HeadLit::leaves(const Vec3& place, const Vec3& direction) const {
    constexpr float kOff = 1e-4F;
    const Ray ray{place, direction, kOff};
    return !canopy_->intersect(ray) && !head_ball_->intersect(ray);
}

// By depths, all round being alike, and directions even in projected solid angle; each depth's grid is shifted, for the
// edge of the head's shadow would fall between the same directions at all of them.
double HeadLit::canopy_flux() const {
    constexpr int kDown = 96;
    constexpr int kSide = 40;
    double flux = 0.0;
    for (int down = 0; down < kDown; ++down) {
        const float radius = canopy_->sphere_radius();
        const float sunk = (static_cast<float>(down) + 0.5F) / kDown * canopy_->depth();
        const float across = std::sqrt(sunk * (2.0F * radius - sunk));
        const Vec3 place = canopy_->sphere_centre() + (radius - sunk) * canopy_->pole() + across * kRight;
        const Vec3 inside = normal_at(place);
        const float shift_x =
            std::fmod(0.7548777F * static_cast<float>(down), 1.0F);  // Roberts' even steps in the plane
        const float shift_y = std::fmod(0.5698403F * static_cast<float>(down), 1.0F);
        for (const float side : {1.0F, -1.0F}) {
            if (side < 0.0F && cloth_.through.all() <= 0.0F) continue;
            const Frame frame = Frame::around(side * inside);
            for (int i = 0; i < kSide * kSide; ++i) {
                const int row = i / kSide;
                const Vec3 direction = frame.to_world(sample_cosine((static_cast<float>(i % kSide) + shift_x) / kSide,
                                                                    (static_cast<float>(row) + shift_y) / kSide));
                if (leaves(place, direction)) flux += static_cast<double>(raw_radiance(place, direction));
            }
        }
    }
    return flux * kPiDouble * static_cast<double>(canopy_->area()) / (kDown * kSide * kSide);
}

}  // namespace understudy
